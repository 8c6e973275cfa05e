import type { Assessment, ShaftLine } from '@sternline/core';
import { html, nothing } from 'lit';
import './leaves/compare-leaf.js';
import './leaves/line-leaf.js';
import './leaves/sheet-leaf.js';
import './leaves/turning-leaf.js';
import './leaves/whirl-leaf.js';
import { judgeLine } from './model/judge-line.js';
import { SHED_TOLERANCES } from './model/layout-tolerances.js';
import type { LineMeasures } from './model/measures.js';
import type { Project, ProjectLine } from './model/project.js';
import type { Draft } from './project-desk.js';

/** The leaves of the page, in order. */
export const LEAVES = [
  { value: 'line', label: 'Line' },
  { value: 'turning', label: 'Turning' },
  { value: 'whirl', label: 'Whirl' },
  { value: 'trials', label: 'Trials' },
  { value: 'compare', label: 'Side by side' },
  { value: 'sheet', label: 'Work sheet' },
];

/** What the leaves show. */
export interface PageState {
  readonly project: Project;
  readonly open: ProjectLine;
  /** rad/s */
  readonly speed: number;
  /** Id of the chosen part. */
  readonly part: string;
  /** Place of the chosen mode, lowest first. */
  readonly mode: number;
  /** rad, angle of the motor shaft that is read out. */
  readonly turn: number;
  readonly draft: Draft | undefined;
  /** The open line as entered, faults and all. */
  readonly entered: ShaftLine;
}

const NO_MEASURES: LineMeasures = {};

/** The leaf of that name, with what it shows. */
export function renderLeaf(leaf: string, state: PageState) {
  const { project, open, speed, draft } = state;
  const { units } = project;
  const { assessment, failure = '' } = judgeLine(open.line, speed);
  const stale = draft !== undefined;
  switch (leaf) {
    case 'line':
      return html`<line-leaf
        .line=${state.entered}
        .drawn=${open.line}
        .lineId=${open.id}
        .faults=${draft?.faults ?? []}
        .assessment=${assessment}
        .failure=${failure}
        .chosenPart=${state.part}
        .units=${units}
        ?onlyLine=${project.lines.length < 2}
        .measures=${open.measures ?? NO_MEASURES}
        .speed=${speed}
      ></line-leaf>`;
    case 'turning':
      return renderTurning(state, assessment);
    case 'whirl':
      return html`<whirl-leaf
        .line=${open.line}
        .assessment=${assessment}
        .mode=${state.mode}
        .settledSpeed=${project.wantedSpeed}
        .units=${units}
        ?stale=${stale}
      ></whirl-leaf>`;
    case 'compare':
      return html`<compare-leaf
        .lines=${project.lines}
        .trials=${project.trials}
        .tolerances=${project.tolerances ?? SHED_TOLERANCES}
        .openLine=${open.id}
        .wantedSpeed=${speed}
        .units=${units}
      ></compare-leaf>`;
    case 'sheet':
      return renderSheet(state, assessment);
    default:
      return nothing;
  }
}

function renderTurning({ open, speed, turn, project, draft }: PageState, assessment: Assessment | undefined) {
  return html`<turning-leaf
    .line=${open.line}
    .turn=${turn}
    .assessment=${assessment}
    .speed=${speed}
    .measures=${open.measures ?? NO_MEASURES}
    .units=${project.units}
    ?stale=${draft !== undefined}
  ></turning-leaf>`;
}

function renderSheet({ project, open, speed, draft }: PageState, assessment: Assessment | undefined) {
  return html`<sheet-leaf
    .line=${open.line}
    .measures=${open.measures ?? NO_MEASURES}
    .assessment=${assessment}
    .speed=${speed}
    .project=${project.name}
    .units=${project.units}
    ?stale=${draft !== undefined}
  ></sheet-leaf>`;
}
