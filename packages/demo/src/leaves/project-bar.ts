import { css, html, LitElement, nothing } from 'lit';
import { customElement, property, query } from 'lit/decorators.js';
import '../elements/choice-field.js';
import type { ChoiceChangedEvent, TextChangedEvent } from '../elements/events.js';
import '../elements/page-menu.js';
import '../elements/text-field.js';
import type { Project } from '../model/project.js';
import { shared } from '../styles/shared.js';
import {
  LineOpenedEvent,
  ProjectCommandEvent,
  ProjectSettingsEvent,
  type ProjectCommand,
} from './leaf-events.js';

/** The bar at the top: which layout is open, undo and redo, and what can be done with the project as a whole. */
@customElement('project-bar')
export class ProjectBar extends LitElement {
  static override styles = [
    shared,
    css`
      :host {
        display: flex;
        align-items: center;
        gap: 0.375rem;
        padding: 0.25rem 1rem;
        border-bottom: 1px solid var(--line-thin);
      }
      h1 {
        font-size: var(--text-large);
        font-weight: 600;
        letter-spacing: -0.01em;
        margin: 0 auto 0 0;
        white-space: nowrap;
      }
      h1 small {
        font-weight: 400;
        font-size: 0.9375rem;
        color: var(--ink-soft);
        margin-left: 0.75rem;
        letter-spacing: 0;
      }
      .layouts {
        min-width: 0;
        flex: 0 1 17rem;
      }
      .menu {
        display: flex;
        flex-direction: column;
        gap: 0.75rem;
        align-items: stretch;
      }
      @media (max-width: 62rem) {
        :host {
          padding-inline: 0.5rem;
        }
        h1 small {
          display: none;
        }
      }
      @media (max-width: 40rem) {
        h1 {
          position: absolute;
          clip-path: inset(50%);
        }
        .layouts {
          flex: 1 1 auto;
        }
      }
    `,
  ];

  @property({ attribute: false }) project!: Project;
  @property() openLine = '';
  @property({ type: Boolean }) canUndo = false;
  @property({ type: Boolean }) canRedo = false;
  /** Whether the device keeps the project. */
  @property() kept: 'kept' | 'refused' | 'not yet' = 'not yet';
  @query('page-menu') private readonly menu!: HTMLElementTagNameMap['page-menu'];

  protected override render() {
    const { project } = this;
    return html`
      <h1>Sternline<small>${project.name}</small></h1>
      <choice-field
        class="layouts"
        compact
        label="Layout to work on"
        .value=${this.openLine}
        .choices=${project.lines.map(({ id, line }) => ({ value: id, label: line.name }))}
        @choice-changed=${(event: ChoiceChangedEvent) => this.dispatchEvent(new LineOpenedEvent(event.choice))}
      ></choice-field>
      ${this.renderStep('undo', { sign: '↶', off: !this.canUndo })}
      ${this.renderStep('redo', { sign: '↷', off: !this.canRedo })}
      <page-menu label="Project">${this.renderMenu()}</page-menu>
    `;
  }

  private renderStep(command: 'undo' | 'redo', { sign, off }: { sign: string; off: boolean }) {
    const label = command === 'undo' ? 'Undo' : 'Redo';
    return html`<button
      type="button"
      aria-label=${label}
      title=${label}
      ?disabled=${off}
      @click=${() => {
        this.command(command);
      }}
    >
      ${sign}
    </button>`;
  }

  private renderMenu() {
    const { project } = this;
    return html`<div class="menu">
      <text-field
        label="Name of the project"
        .value=${project.name}
        @text-changed=${(event: TextChangedEvent) =>
          this.dispatchEvent(new ProjectSettingsEvent({ name: event.text || project.name }))}
      ></text-field>
      <choice-field
        label="Units"
        hint="Lengths and masses; speeds are in rpm and angles in degrees either way."
        .value=${project.units}
        .choices=${[
          { value: 'metric', label: 'millimetres, grams' },
          { value: 'inch', label: 'inches, ounces' },
        ]}
        @choice-changed=${(event: ChoiceChangedEvent) =>
          this.dispatchEvent(
            new ProjectSettingsEvent({ units: event.choice === 'inch' ? 'inch' : 'metric' }),
          )}
      ></choice-field>
      ${this.renderCommand('save', 'Save a project file')}
      ${this.renderCommand('open', 'Open a project file')}
      ${this.renderCommand('sample', 'Load the sample project')}
      <p class="hint">
        ${
          this.kept === 'refused'
            ? 'This browser keeps nothing for this page: save a project file before you leave.'
            : 'The project is kept on this device, in this browser; nothing leaves it.'
        }
      </p>
      ${project.note ? html`<p class="hint">${project.note}</p>` : nothing}
      <p class="hint">
        Results are estimates from what was entered. Before a shaft or propeller turns: secure the model,
        guard or take off the propeller, keep eyes, fingers and loose clothes clear, and disconnect the
        battery before touching. Where people, money or a rule depends on a figure, a qualified engineer and
        the local code decide.
      </p>
    </div>`;
  }

  private renderCommand(command: ProjectCommand, label: string) {
    return html`<button
      type="button"
      @click=${() => {
        this.menu.close();
        this.command(command);
      }}
    >
      ${label}
    </button>`;
  }

  private command(command: ProjectCommand): void {
    this.dispatchEvent(new ProjectCommandEvent(command));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'project-bar': ProjectBar;
  }
}
