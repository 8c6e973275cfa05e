import { html, LitElement, nothing } from 'lit';
import { customElement, query, state } from 'lit/decorators.js';
import { appStyles } from './app-styles.js';
import type { PartChosenEvent, SpeedMovedEvent } from './charts/chart-events.js';
import './charts/line-drawing.js';
import { saveFile } from './charts/save-file.js';
import './charts/speed-ruler.js';
import './elements/choice-field.js';
import type {
  ChoiceChangedEvent,
  LevelsMeasuredEvent,
  OrderLevel,
  TextChangedEvent,
  TrialChangedEvent,
  TrialRemovedEvent,
  TrialsAddedEvent,
  ValueChangedEvent,
} from './elements/events.js';
import './elements/number-field.js';
import './elements/page-menu.js';
import './elements/tab-bar.js';
import './elements/text-field.js';
import { FileDrop } from './file-drop.js';
import './leaves/compare-leaf.js';
import type {
  LineCopiedEvent,
  LineEditedEvent,
  LineOpenedEvent,
  LineRemovedEvent,
} from './leaves/leaf-events.js';
import './leaves/line-leaf.js';
import './leaves/title-block.js';
import './leaves/trials-leaf.js';
import './leaves/turning-leaf.js';
import './leaves/whirl-leaf.js';
import { judgeLine, rulerTop } from './model/judge-line.js';
import type { Project, ProjectLine, Trial } from './model/project.js';
import { openLineOf, withCopy, withoutLine, withoutTrial, withTrials } from './model/project-edits.js';
import { readProjectFile, writeProjectFile } from './model/project-file.js';
import { sampleProject } from './model/sample-project.js';
import { formatFigure, fromScreen, toScreen, writeNumber } from './model/units.js';
import { ProjectDesk } from './project-desk.js';
import { limitLabel, rulerBands, rulerLevels } from './ruler-input.js';
import { shared } from './styles/shared.js';
import { jointAngles } from '@sternline/core';

const LEAVES = [
  { value: 'line', label: 'Line' },
  { value: 'turning', label: 'Turning' },
  { value: 'whirl', label: 'Whirl' },
  { value: 'trials', label: 'Trials' },
  { value: 'compare', label: 'Side by side' },
];

/** The page. It alone owns the project; everything below it takes values and fires events. */
@customElement('app-root')
export class AppRoot extends LitElement {
  static override styles = [shared, appStyles];

  @state() private leaf = 'line';
  @state() private chosenPart = '';
  /** rad/s, while a hand moves the mark on the ruler. */
  @state() private movingSpeed: number | undefined;
  @state() private levels: ReadonlyMap<string, readonly OrderLevel[]> = new Map();
  @state() private notice = '';
  @query('trials-leaf') private readonly trialsLeaf!: HTMLElementTagNameMap['trials-leaf'];
  @query('page-menu') private readonly menu!: HTMLElementTagNameMap['page-menu'];

  private readonly desk = new ProjectDesk(this);
  private readonly drop = new FileDrop(this, (files) => void this.takeFiles(files));

  protected override render() {
    const { project } = this.desk;
    const open = project ? openLineOf(project) : undefined;
    if (!project || !open) return nothing;
    const speed = this.movingSpeed ?? project.wantedSpeed;
    return html`
      ${this.renderBar(project, open)} ${this.renderSheet(project, open, speed)}
      <tab-bar
        label="Leaves"
        .tabs=${LEAVES}
        .value=${this.leaf}
        @choice-changed=${(event: ChoiceChangedEvent) => (this.leaf = event.choice)}
      ></tab-bar>
      <main
        @part-choose=${this.onPart}
        @line-edited=${(event: LineEditedEvent) => {
          this.desk.editLine(event.line);
        }}
        @line-copied=${(event: LineCopiedEvent) => {
          this.copyLine(project, event.id);
        }}
        @line-opened=${(event: LineOpenedEvent) => {
          this.openLine(event.id);
        }}
        @line-removed=${(event: LineRemovedEvent) => {
          this.desk.change(withoutLine(project, event.id));
        }}
      >
        ${this.renderLeaves(project, open, speed)}
      </main>
      ${this.renderRuler(project, open, speed)} ${this.renderNotice()}
      ${this.drop.over ? html`<div class="over"><p class="sentence">Drop a project or a recording</p></div>` : nothing}
    `;
  }

  private renderBar(project: Project, open: ProjectLine) {
    return html`<header>
      <h1>Sternline<small>${project.name}</small></h1>
      <choice-field
        compact
        label="Layout to work on"
        .value=${open.id}
        .choices=${project.lines.map(({ id, line }) => ({ value: id, label: line.name }))}
        @choice-changed=${(event: ChoiceChangedEvent) => {
          this.openLine(event.choice);
        }}
      ></choice-field>
      <button
        type="button"
        aria-label="Undo"
        title="Undo"
        ?disabled=${!this.desk.canUndo}
        @click=${() => {
          this.desk.undo();
        }}
      >
        ↶
      </button>
      <button
        type="button"
        aria-label="Redo"
        title="Redo"
        ?disabled=${!this.desk.canRedo}
        @click=${() => {
          this.desk.redo();
        }}
      >
        ↷
      </button>
      <page-menu label="Project">${this.renderMenu(project)}</page-menu>
    </header>`;
  }

  private renderMenu(project: Project) {
    return html`<div class="menu">
      <text-field
        label="Name of the project"
        .value=${project.name}
        @text-changed=${(event: TextChangedEvent) => {
          this.desk.change({ ...project, name: event.text || project.name });
        }}
      ></text-field>
      <choice-field
        label="Units"
        hint="Lengths and masses; speeds are in rpm and angles in degrees either way."
        .value=${project.units}
        .choices=${[
          { value: 'metric', label: 'millimetres, grams' },
          { value: 'inch', label: 'inches, ounces' },
        ]}
        @choice-changed=${(event: ChoiceChangedEvent) => {
          this.desk.adjust({ ...project, units: event.choice === 'inch' ? 'inch' : 'metric' });
        }}
      ></choice-field>
      <button type="button" @click=${this.saveProject}>Save a project file</button>
      <button type="button" @click=${this.chooseFile}>Open a project file</button>
      <button type="button" @click=${this.loadSample}>Load the sample project</button>
      <p class="hint">${this.keptWords()}</p>
      ${project.note ? html`<p class="hint">${project.note}</p>` : nothing}
      <p class="hint">
        Results are estimates from what was entered. Before a shaft or propeller turns: secure the model,
        guard or take off the propeller, keep eyes, fingers and loose clothes clear, and disconnect the
        battery before touching. Where people, money or a rule depends on a figure, a qualified engineer and
        the local code decide.
      </p>
    </div>`;
  }

  private keptWords(): string {
    if (this.desk.kept === 'refused')
      return 'This browser keeps nothing for this page: save a project file before you leave.';
    return 'The project is kept on this device, in this browser; nothing leaves it.';
  }

  private renderSheet(project: Project, open: ProjectLine, speed: number) {
    const { assessment } = judgeLine(open.line, speed);
    return html`<div class="sheet">
      <line-drawing
        .line=${open.line}
        .chosen=${this.chosenPart}
        .jointLabels=${jointAngles(open.line).map((angle) => formatFigure(angle, 'angle', project.units))}
        .barLabel=${(length: number) => formatFigure(length, 'length', project.units)}
        @part-choose=${this.onPart}
      ></line-drawing>
      <title-block
        .name=${open.line.name}
        .assessment=${assessment}
        .units=${project.units}
        .sample=${project.note ? project.name : ''}
        ?stale=${this.desk.draft !== undefined}
      ></title-block>
    </div>`;
  }

  private renderLeaves(project: Project, open: ProjectLine, speed: number) {
    const shown = this.leaf;
    return html`
      ${LEAVES.filter(({ value }) => value !== 'trials' && value === shown).map(
        ({ value, label }) =>
          html`<div class="leaf" role="tabpanel" aria-label=${label} tabindex="0">
            ${this.renderLeaf(value, { project, open, speed })}
          </div>`,
      )}
      <div class="leaf" role="tabpanel" aria-label="Trials" tabindex="0" ?hidden=${shown !== 'trials'}>
        <trials-leaf
          .trials=${project.trials}
          .line=${open.line}
          .lineId=${open.id}
          .wantedSpeed=${speed}
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

  private renderLeaf(
    leaf: string,
    { project, open, speed }: { project: Project; open: ProjectLine; speed: number },
  ) {
    const { units } = project;
    const { assessment, failure = '' } = judgeLine(open.line, speed);
    const stale = this.desk.draft !== undefined;
    switch (leaf) {
      case 'turning':
        return html`<turning-leaf .line=${open.line} .units=${units} ?stale=${stale}></turning-leaf>`;
      case 'whirl':
        return html`<whirl-leaf
          .line=${open.line}
          .assessment=${assessment}
          .units=${units}
          ?stale=${stale}
        ></whirl-leaf>`;
      case 'compare':
        return html`<compare-leaf
          .lines=${project.lines}
          .openLine=${open.id}
          .wantedSpeed=${speed}
          .units=${units}
        ></compare-leaf>`;
      default:
        return html`<line-leaf
          .line=${this.desk.entered(open)}
          .lineId=${open.id}
          .faults=${this.desk.draft?.faults ?? []}
          .assessment=${assessment}
          .failure=${failure}
          .chosenPart=${this.chosenPart}
          .units=${units}
          ?onlyLine=${project.lines.length < 2}
        ></line-leaf>`;
    }
  }

  private renderRuler(project: Project, open: ProjectLine, speed: number) {
    const { units } = project;
    const { assessment } = judgeLine(open.line, speed);
    const measured = project.trials
      .filter((trial) => trial.lineId === open.id)
      .flatMap((trial) => this.levels.get(trial.id) ?? []);
    return html`<div class="ruler">
      <div class="wanted">
        <number-field
          label="Wanted shaft speed"
          unit="rpm"
          .value=${Math.round(toScreen(speed, 'speed', units))}
          .decimals=${0}
          .min=${50}
          .max=${60_000}
          .step=${50}
          @value-changed=${(event: ValueChangedEvent) => {
            this.setSpeed(fromScreen(event.value ?? NaN, 'speed', units));
          }}
        ></number-field>
      </div>
      <speed-ruler
        .bands=${assessment ? rulerBands(assessment, units) : []}
        .levels=${rulerLevels(measured, units)}
        .wanted=${toScreen(speed, 'speed', units)}
        .limit=${toScreen(assessment?.speedLimit.speed ?? Infinity, 'speed', units)}
        .limitLabel=${assessment ? limitLabel(assessment, units) : ''}
        .top=${toScreen(rulerTop(open.line, project.wantedSpeed), 'speed', units)}
        .write=${(value: number) => writeNumber(value, 'speed')}
        @speed-move=${(event: SpeedMovedEvent) => {
          const moved = fromScreen(event.speed, 'speed', units);
          if (event.phase === 'settled') this.setSpeed(moved);
          else this.movingSpeed = moved;
        }}
      ></speed-ruler>
    </div>`;
  }

  private renderNotice() {
    return html`<div role="status">
      ${
        this.notice
          ? html`<div class="notice">
              <p>${this.notice}</p>
              <button type="button" @click=${() => (this.notice = '')}>Close</button>
            </div>`
          : nothing
      }
    </div>`;
  }

  private setSpeed(speed: number): void {
    const { project } = this.desk;
    this.movingSpeed = undefined;
    if (project && speed > 0 && speed !== project.wantedSpeed)
      this.desk.change({ ...project, wantedSpeed: speed });
  }

  private openLine(id: string): void {
    const { project } = this.desk;
    if (project) this.desk.adjust({ ...project, openLine: id });
  }

  private copyLine(project: Project, id: string): void {
    const entry = project.lines.find((candidate) => candidate.id === id);
    if (entry) this.desk.change(withCopy(project, entry.line));
  }

  private onPart(event: PartChosenEvent): void {
    this.chosenPart = event.part;
    this.leaf = 'line';
  }

  private onLevels({ levels }: LevelsMeasuredEvent): void {
    const byTrial = new Map(this.levels);
    for (const { trialId } of levels) {
      byTrial.set(
        trialId,
        levels.filter((level) => level.trialId === trialId),
      );
    }
    this.levels = byTrial;
  }

  private saveProject(): void {
    const { project } = this.desk;
    if (!project) return;
    const stem = project.name
      .replace(/[^\p{L}\p{N}]+/gu, '-')
      .replace(/^-|-$/g, '')
      .toLowerCase();
    saveFile(`${stem || 'project'}.sternline.json`, {
      text: writeProjectFile(project),
      type: 'application/json',
    });
    this.menu.close();
  }

  private chooseFile(): void {
    const input = document.createElement('input');
    input.type = 'file';
    input.accept = '.json,application/json';
    input.addEventListener('change', () => void this.takeFiles([...(input.files ?? [])]));
    input.click();
    this.menu.close();
  }

  private loadSample(): void {
    this.desk.change(sampleProject());
    this.menu.close();
    this.notice = 'The sample project is loaded. Undo brings yours back.';
  }

  private async takeFiles(files: readonly File[]): Promise<void> {
    const projects = files.filter((file) => /\.json$/i.test(file.name));
    const recordings = files.filter((file) => !projects.includes(file));
    const [file] = projects;
    if (file) await this.openProject(file);
    if (recordings.length === 0) return;
    this.leaf = 'trials';
    await this.updateComplete;
    this.trialsLeaf.addFiles(recordings);
  }

  private async openProject(file: File): Promise<void> {
    try {
      this.desk.change(readProjectFile(await file.text()));
      this.chosenPart = '';
      this.notice = `“${file.name}” is open. Undo brings back what was there before.`;
    } catch (error) {
      this.notice = `“${file.name}” was not opened. ${error instanceof Error ? error.message : String(error)}`;
    }
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'app-root': AppRoot;
  }
}
