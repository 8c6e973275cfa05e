import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  followView,
  openingView,
  panView,
  zoomView,
} from '../../../packages/demo/src/charts/spectrum-view.js';

const whole = { from: 0, to: 1000 };

describe('zoomView', () => {
  it('keeps the frequency it zooms about where it is', () => {
    const view = zoomView({ from: 0, to: 1000 }, { factor: 0.5, about: 250, whole });
    expect(view).toEqual({ from: 125, to: 625 });
    expect((250 - view.from) / (view.to - view.from)).toBeCloseTo(0.25, 12);
  });

  it('in and out again comes back (property)', () => {
    fc.assert(
      fc.property(fc.double({ min: 450, max: 550, noNaN: true }), (about) => {
        const view = { from: 400, to: 600 };
        const back = zoomView(zoomView(view, { factor: 0.5, about, whole }), { factor: 2, about, whole });
        expect(back.from).toBeCloseTo(400, 8);
        expect(back.to).toBeCloseTo(600, 8);
      }),
    );
  });

  it('shows no more than there is', () => {
    expect(zoomView({ from: 900, to: 1000 }, { factor: 100, about: 950, whole })).toEqual(whole);
  });
});

describe('panView', () => {
  it('stops at the ends with its width kept', () => {
    expect(panView({ from: 100, to: 300 }, { share: -5, whole })).toEqual({ from: 0, to: 200 });
    expect(panView({ from: 100, to: 300 }, { share: 0.5, whole })).toEqual({ from: 200, to: 400 });
  });
});

describe('openingView', () => {
  it('shows a little beyond the highest frequency in question, within what there is', () => {
    expect(openingView([100, 200], whole).to).toBeCloseTo(230, 9);
    expect(openingView([990], whole)).toEqual(whole);
    expect(openingView([], whole)).toEqual(whole);
  });
});

describe('followView', () => {
  it('leaves a view that holds the frequency, else moves it there', () => {
    const view = { from: 100, to: 200 };
    expect(followView(view, { at: 150, whole })).toBe(view);
    expect(followView(view, { at: 400, whole })).toEqual({ from: 350, to: 450 });
    expect(followView(view, { at: 990, whole })).toEqual({ from: 900, to: 1000 });
  });
});
