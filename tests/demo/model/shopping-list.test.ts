import { exampleLine } from '@sternline/core';
import { describe, expect, it } from 'vitest';
import { shoppingList } from '../../../packages/demo/src/model/shopping-list.js';

describe('shoppingList', () => {
  it('names every part of the example once, alike things together', () => {
    const items = shoppingList(exampleLine(), { drilling: { tubeDiameter: 0.008, bulkheads: [] } }, 'metric');
    const words = items.map(({ count, what, details }) =>
      `${count} ${what}: ${details}`.replace(/\u00a0/g, ' '),
    );
    // Figures of the invented ferry, from its description: 318 mm over the bushes, 5 mm shaft, 48 mm four-bladed propeller.
    expect(words).toEqual([
      '1 motor: 480 rpm/V, 5 mm shaft, run on 11.1 V',
      '1 universal joint: 16 g, for up to 30.0°',
      '1 propeller shaft: stainless steel 304, 5 mm ground bar, 376 mm as drawn',
      '1 stern tube: 7 mm bore, 8 mm outside, 318 mm over its bushes',
      '2 bush: sintered bronze, 5.03 mm bore, 10 mm long',
      '1 propeller: 4 blades, 48 mm across, 50 mm pitch, 38 g',
    ]);
  });
});
