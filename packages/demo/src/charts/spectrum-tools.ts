import { html } from 'lit';
import type { AmplitudeScale } from './spectrum-geometry.js';

/** What the buttons under a spectrum do. */
export interface SpectrumActions {
  readonly zoom: (factor: number) => void;
  readonly pan: (share: number) => void;
  readonly reset: () => void;
  readonly all: () => void;
  readonly scale: (scale: AmplitudeScale) => void;
  readonly save: () => void;
}

/**
 * The buttons under a spectrum.
 *
 * @param scale - the amplitude scale on show
 * @param actions - what each does
 * @returns their template
 */
export function spectrumTools(scale: AmplitudeScale, actions: SpectrumActions) {
  const zoom = (factor: number) => () => {
    actions.zoom(factor);
  };
  const pan = (share: number) => () => {
    actions.pan(share);
  };
  const change = () => {
    actions.scale(scale === 'linear' ? 'logarithmic' : 'linear');
  };
  return html`<div class="tools">
    <button type="button" aria-label="Zoom in" @click=${zoom(0.5)}>+</button>
    <button type="button" aria-label="Zoom out" @click=${zoom(2)}>−</button>
    <button type="button" aria-label="Move to lower frequencies" @click=${pan(-0.5)}>◂</button>
    <button type="button" aria-label="Move to higher frequencies" @click=${pan(0.5)}>▸</button>
    <button type="button" @click=${actions.reset}>Reset</button>
    <button type="button" @click=${actions.all}>Whole range</button>
    <button type="button" @click=${change}>${scale === 'linear' ? 'Log scale' : 'Linear scale'}</button>
    <button type="button" @click=${actions.save}>Save every line as CSV</button>
  </div>`;
}
