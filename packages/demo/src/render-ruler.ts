import { html } from 'lit';
import type { OrderLevel } from './elements/events.js';
import type { WantedSpeedEvent } from './leaves/leaf-events.js';
import './leaves/speed-bench.js';
import { judgeLine } from './model/judge-line.js';
import type { Project, ProjectLine } from './model/project.js';

/** What the ruler shows beside the project. */
export interface RulerState {
  readonly open: ProjectLine;
  /** rad/s, the wanted speed, or where a hand holds it now. */
  readonly speed: number;
  /** By trial. */
  readonly levels: ReadonlyMap<string, readonly OrderLevel[]>;
  readonly onWantedSpeed: (event: WantedSpeedEvent) => void;
}

/** The speed ruler under every leaf, with what the trials of the open line measured. */
export function renderRuler(project: Project, { open, speed, levels, onWantedSpeed }: RulerState) {
  const measured = project.trials
    .filter((trial) => trial.lineId === open.id)
    .flatMap((trial) => levels.get(trial.id) ?? []);
  return html`<section aria-label="Shaft speed">
    <speed-bench
      .line=${open.line}
      .assessment=${judgeLine(open.line, speed).assessment}
      .levels=${measured}
      .wantedSpeed=${speed}
      .settledSpeed=${project.wantedSpeed}
      .units=${project.units}
      @wanted-speed=${onWantedSpeed}
    ></speed-bench>
  </section>`;
}
