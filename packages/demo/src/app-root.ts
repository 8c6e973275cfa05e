import { html, LitElement, nothing } from 'lit';
import { customElement, query, state } from 'lit/decorators.js';
import { appStyles } from './app-styles.js';
import type { ModeChosenEvent, PartChosenEvent, TurnReadEvent } from './charts/chart-events.js';
import { partOrMain } from './charts/line-parts.js';
import type {
  ChoiceChangedEvent,
  LevelsMeasuredEvent,
  OrderLevel,
  TrialChangedEvent,
  TrialRemovedEvent,
  TrialsAddedEvent,
} from './elements/events.js';
import './elements/tab-bar.js';
import { FileDrop } from './file-drop.js';
import type { AdviceChangedEvent, LineAddedEvent, TolerancesChangedEvent } from './leaves/advice-events.js';
import type {
  LineCopiedEvent,
  LineEditedEvent,
  LineOpenedEvent,
  LineRemovedEvent,
  MeasuresChangedEvent,
  ProjectCommandEvent,
  ProjectSettingsEvent,
  WantedSpeedEvent,
} from './leaves/leaf-events.js';
import './leaves/line-sheet.js';
import './leaves/project-bar.js';
import { withLevels } from './leaves/ruler-input.js';
import './leaves/trials-leaf.js';
import { modesToShow } from './leaves/whirl-words.js';
import { judgeLine } from './model/judge-line.js';
import type { Project, ProjectLine, Trial } from './model/project.js';
import {
  openLineOf,
  withCopy,
  withMeasures,
  withoutLine,
  withoutTrial,
  withTrials,
} from './model/project-edits.js';
import { sampleProject } from './model/sample-project.js';
import { ProjectDesk } from './project-desk.js';
import { chooseProjectFile, isProjectFile, openProjectFile, saveProject } from './project-files.js';
import { LEAVES, renderLeaf } from './render-leaf.js';
import { renderNotice } from './render-notice.js';
import { renderRuler } from './render-ruler.js';
import { shared } from './styles/shared.js';
import { takeAdvice } from './take-advice.js';

const OVER = html`<div class="over"><p class="sentence">Drop a project or a recording</p></div>`;

/** The page. It alone owns the project; everything below it takes values and fires events. */
@customElement('app-root')
export class AppRoot extends LitElement {
  static override styles = [shared, appStyles];

  @state() private leaf = 'line';
  @state() private chosenPart = '';
  @state() private mode = 0;
  /** rad, angle of the motor shaft that is being read out. */
  @state() private turn = 0;
  /** rad/s, while a hand moves the mark on the ruler. */
  @state() private movingSpeed: number | undefined;
  @state() private levels: ReadonlyMap<string, readonly OrderLevel[]> = new Map();
  @state() private notice = '';
  @query('trials-leaf') private readonly trialsLeaf!: HTMLElementTagNameMap['trials-leaf'];

  private readonly desk = new ProjectDesk(this);
  private readonly drop = new FileDrop(this, (files) => void this.takeFiles(files));

  protected override render() {
    const { project } = this.desk;
    const open = project ? openLineOf(project) : undefined;
    if (!project || !open) return nothing;
    const speed = this.movingSpeed ?? project.wantedSpeed;
    return html`
      ${this.renderBar(project, open)} ${this.renderSheet(project, open, speed)}
      <nav aria-label="Leaves of the page">
        <tab-bar
          label="Leaves"
          .tabs=${LEAVES}
          .value=${this.leaf}
          @choice-changed=${(event: ChoiceChangedEvent) => (this.leaf = event.choice)}
        ></tab-bar>
      </nav>
      <main
        @part-choose=${this.onPart}
        @turn-read=${(event: TurnReadEvent) => (this.turn = event.angle)}
        @mode-choose=${(event: ModeChosenEvent) => (this.mode = event.mode)}
        @line-edited=${(event: LineEditedEvent) => {
          this.desk.editLine(event.line);
        }}
        @measures-changed=${(event: MeasuresChangedEvent) => {
          this.desk.change(withMeasures(project, open.id, event.measures));
        }}
        @advice-changed=${this.onAdvice}
        @line-added=${this.onAdvice}
        @tolerances-changed=${this.onAdvice}
        @wanted-speed=${this.onWantedSpeed}
        @line-copied=${this.onLineCopied}
        @line-opened=${this.onLineOpened}
        @line-removed=${(event: LineRemovedEvent) => {
          this.desk.change(withoutLine(project, event.id));
        }}
      >
        ${this.renderLeaves(project, open, speed)}
      </main>
      ${renderRuler(project, { open, speed, levels: this.levels, onWantedSpeed: this.onWantedSpeed })}
      ${renderNotice(this.notice, () => (this.notice = ''))} ${this.drop.over ? OVER : nothing}
    `;
  }

  private renderBar(project: Project, open: ProjectLine) {
    return html`<header>
      <project-bar
        .project=${project}
        .openLine=${open.id}
        ?canUndo=${this.desk.canUndo}
        ?canRedo=${this.desk.canRedo}
        .kept=${this.desk.kept}
        @line-opened=${this.onLineOpened}
        @project-command=${this.onCommand}
        @project-settings=${(event: ProjectSettingsEvent) => {
          this.desk.adjust({ ...project, ...event.settings });
        }}
      ></project-bar>
    </header>`;
  }

  private renderSheet(project: Project, open: ProjectLine, speed: number) {
    const { assessment } = judgeLine(open.line, speed);
    const modes = this.leaf === 'whirl' && assessment ? modesToShow(assessment) : [];
    return html`<section aria-label="Drawing of the line">
      <line-sheet
        .line=${open.line}
        .assessment=${assessment}
        .chosenPart=${this.leaf === 'line' ? partOrMain(open.line, this.chosenPart) : ''}
        .mode=${modes[this.mode] ?? modes[0]}
        .turn=${this.leaf === 'turning' ? this.turn : 0}
        .units=${project.units}
        .note=${project.note}
        ?stale=${this.desk.draft !== undefined}
        @part-choose=${this.onPart}
      ></line-sheet>
    </section>`;
  }

  private renderLeaves(project: Project, open: ProjectLine, speed: number) {
    const shown = this.leaf;
    return html`
      ${LEAVES.filter(({ value }) => value !== 'trials' && value === shown).map(
        ({ value, label }) =>
          html`<div class="leaf" role="tabpanel" aria-label=${label} tabindex="0">
            ${renderLeaf(value, {
              project,
              open,
              speed,
              part: partOrMain(open.line, this.chosenPart),
              mode: this.mode,
              turn: this.turn,
              draft: this.desk.draft,
              entered: this.desk.entered(open),
            })}
          </div>`,
      )}
      <div class="leaf" role="tabpanel" aria-label="Trials" tabindex="0" ?hidden=${shown !== 'trials'}>
        <trials-leaf
          .trials=${project.trials}
          .line=${open.line}
          .lineId=${open.id}
          .advice=${open.advice}
          .wantedSpeed=${project.wantedSpeed}
          .units=${project.units}
          @trials-added=${(event: TrialsAddedEvent<Trial>) => {
            this.desk.change(withTrials(project, event.trials));
          }}
          @trial-changed=${(event: TrialChangedEvent<Trial>) => {
            this.desk.change(withTrials(project, [event.trial]));
          }}
          @trial-removed=${(event: TrialRemovedEvent) => {
            this.desk.change(withoutTrial(project, event.id));
          }}
          @levels-measured=${this.onLevels}
        ></trials-leaf>
      </div>
    `;
  }

  private readonly onWantedSpeed = ({ speed, phase }: WantedSpeedEvent): void => {
    const { project } = this.desk;
    this.movingSpeed = phase === 'moving' ? speed : undefined;
    if (project && phase === 'settled' && speed !== project.wantedSpeed) {
      this.desk.change({ ...project, wantedSpeed: speed });
    }
  };

  private onLineOpened({ id }: LineOpenedEvent): void {
    const { project } = this.desk;
    if (project) this.desk.adjust({ ...project, openLine: id });
  }

  private onCommand({ command }: ProjectCommandEvent): void {
    switch (command) {
      case 'undo':
        this.desk.undo();
        break;
      case 'redo':
        this.desk.redo();
        break;
      case 'save':
        if (this.desk.project) saveProject(this.desk.project);
        break;
      case 'open':
        chooseProjectFile((file) => void this.openProject(file));
        break;
      case 'sample':
        this.desk.change(sampleProject());
        this.notice = 'The sample project is loaded. Undo brings yours back.';
    }
  }

  private onAdvice(event: AdviceChangedEvent | LineAddedEvent | TolerancesChangedEvent): void {
    const { project } = this.desk;
    const open = project ? openLineOf(project) : undefined;
    if (!project || !open) return;
    const taken = takeAdvice(project, open, event);
    this.desk.change(taken.project);
    this.notice = taken.notice ?? this.notice;
  }

  private onLineCopied({ id }: LineCopiedEvent): void {
    const { project } = this.desk;
    const entry = project?.lines.find((candidate) => candidate.id === id);
    if (project && entry) this.desk.change(withCopy(project, entry));
  }

  private onPart(event: PartChosenEvent): void {
    this.chosenPart = event.part;
    this.leaf = 'line';
  }

  private onLevels({ levels }: LevelsMeasuredEvent): void {
    this.levels = withLevels(this.levels, levels);
  }

  private async takeFiles(files: readonly File[]): Promise<void> {
    const known = await Promise.all(files.map(isProjectFile));
    const file = files.find((_, index) => known[index]);
    const recordings = files.filter((_, index) => !known[index]);
    if (file) await this.openProject(file);
    if (recordings.length === 0) return;
    this.leaf = 'trials';
    await this.updateComplete;
    this.trialsLeaf.addFiles(recordings);
  }

  private async openProject(file: File): Promise<void> {
    const opened = await openProjectFile(file);
    if (opened.project) this.desk.change(opened.project);
    this.notice = opened.notice;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'app-root': AppRoot;
  }
}
