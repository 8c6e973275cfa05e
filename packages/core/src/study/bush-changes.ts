import type { ShaftLine, Support } from '../line/types.js';
import { avoidBands } from './avoid-bands.js';
import { bandReasons } from './band-reasons.js';
import { lineExcitations } from './excitations.js';
import { costsOf, withShaft, type LineChange } from './line-change.js';
import { criticalsCovering } from './line-criticals.js';
import { mainSpan, type MainSpan } from './main-span.js';
import { verdictOf } from './reasons.js';
import { speedLimit } from './speed-limit.js';
import { figure, makeStatement } from './statement.js';
import type { Margins, Verdict } from './types.js';

/** Places tried over the span before the best is refined. */
const PLACES = 20;
/** Share of the span at either end where a further bush would hold nothing. */
const END = 0.08;
const ROUNDS = 5;
/** m, what a builder can mark. */
const MARK = 0.0005;
/** Bands are looked for as far as those that could be near the wanted speed. */
const REACH = 1.5;
const BADNESS: Readonly<Record<Verdict, number>> = { clear: 0, near: 1, inside: 2 };

/**
 * A further bush in the longest span, where it does most: the best verdict by the bands of whirl, and of places with one
 * verdict the highest speed limit. A grid over the span, then bisection about the best.
 */
export function bushChanges(
  line: ShaftLine,
  { speed, margins }: { readonly speed: number; readonly margins: Margins },
): LineChange[] {
  const span = mainSpan(line);
  if (!span) return [];
  const at = bestPlace(span, (place) => rate(withBush(line, span, place), { speed, margins }));
  const figures = { at: figure('length', at - span.from), span: figure('length', span.to - span.from) };
  return [
    {
      kind: 'bush',
      heading: makeStatement('A further bush {at} behind the front one, in the span of {span}', figures),
      apply: (one) => withBush(one, span, at),
      costs: costsOf({
        work: 4,
        money: 2,
        destructive: 'reversible',
        takes: [
          makeStatement(
            'shaft out, a bush turned to the tube, pushed in to its mark and bonded, reamed in line',
            {},
          ),
        ],
        buy: [],
      }),
      buys: (changed) => {
        const diameter = (changed.shafts.find(({ name }) => name === span.shaft.name) ?? span.shaft)
          .outerDiameter;
        return [makeStatement('a further bush for {diameter}', { diameter: figure('length', diameter) })];
      },
    },
  ];
}

function withBush(line: ShaftLine, { index, from }: MainSpan, at: number): ShaftLine {
  return withShaft(line, index, (shaft) => {
    const front = shaft.supports.find((support) => support.at === from);
    const bush: Support = { ...held(front), at };
    return { ...shaft, supports: [...shaft.supports, bush].sort((a, b) => a.at - b.at) };
  });
}

/** A bush like its neighbour, but one that holds no slope. */
function held(like: Support | undefined): Omit<Support, 'at'> {
  const { radialStiffness, length, bore, lining } = like ?? {};
  return {
    ...(radialStiffness === undefined ? {} : { radialStiffness }),
    ...(length === undefined ? {} : { length }),
    ...(bore === undefined ? {} : { bore }),
    ...(lining === undefined ? {} : { lining }),
  };
}

interface Rating {
  readonly at: number;
  readonly badness: number;
  readonly limit: number;
}

function bestPlace({ from, to }: MainSpan, rating: (at: number) => Omit<Rating, 'at'>): number {
  const rated = (at: number): Rating => ({ at, ...rating(at) });
  const start = from + END * (to - from);
  const step = ((1 - 2 * END) * (to - from)) / (PLACES - 1);
  let best = Array.from({ length: PLACES }, (_, i) => rated(start + i * step)).reduce(better);
  for (let round = 0, reach = step / 2; round < ROUNDS && reach > MARK; round++, reach /= 2) {
    best = [best.at - reach, best.at + reach].map(rated).reduce(better, best);
  }
  const marked = rated(Math.round(best.at / MARK) * MARK);
  return marked.badness > best.badness ? best.at : marked.at;
}

function better(a: Rating, b: Rating): Rating {
  if (a.badness !== b.badness) return a.badness < b.badness ? a : b;
  return b.limit > a.limit ? b : a;
}

function rate(line: ShaftLine, { speed, margins }: { readonly speed: number; readonly margins: Margins }) {
  const excitations = lineExcitations(line, margins);
  const criticals = criticalsCovering(line, { excitations, cover: REACH * speed });
  const bands = avoidBands(criticals, excitations);
  const limit = speedLimit(bands);
  return { badness: BADNESS[verdictOf(bandReasons({ speed, bands, limit }))], limit: limit.speed };
}
