import { LININGS, MATERIALS, STOCK, type ShaftLine } from '@sternline/core';
import type { LinePart } from '../charts/line-parts.js';
import type { Choice } from '../elements/choice-field.js';
import { getIn, setIn } from '../model/set-in.js';

/** Something of a part that is chosen from a list. */
export interface PartChoice {
  readonly label: string;
  readonly hint: string;
  readonly value: string;
  readonly choices: readonly Choice[];
  /** The line with another choice. */
  readonly take: (choice: string) => ShaftLine;
}

/**
 * What is chosen of a part of a line, most important first.
 *
 * @param part - the part
 * @param line - the line it is of
 */
export function partChoices({ kind, shaft, index }: LinePart, line: ShaftLine): PartChoice[] {
  switch (kind) {
    case 'shaft':
      return [materialChoice(line, `shafts[${index}].material`)];
    case 'joint':
      return [
        kindChoice(line, `joints[${index}].kind`),
        ...fastenerChoices(line, `joints[${index}].fastener`),
      ];
    case 'support': {
      const at = `shafts[${shaft}].supports[${index}]`;
      return [liningChoice(line, `${at}.lining`), holdChoice(line, `${at}.fixesSlope`)];
    }
    case 'disc':
    case 'motor':
    case 'propeller':
      return [];
  }
}

function materialChoice(line: ShaftLine, path: string): PartChoice {
  const material = getIn(line, path) as ShaftLine['shafts'][number]['material'];
  const names: string[] = Object.values(MATERIALS).map(({ name }) => name);
  return {
    label: 'Material',
    hint: 'As bought; stiffness and weight come from it.',
    value: material.name,
    choices: named(withOwn(names, material.name)),
    take: (choice) => {
      const found = Object.values(MATERIALS).find(({ name }) => name === choice);
      return found ? setIn(line, path, found) : line;
    },
  };
}

function kindChoice(line: ShaftLine, path: string): PartChoice {
  return {
    label: 'Kind',
    hint: 'A rigid coupling carries no angle.',
    value: String(getIn(line, path)),
    choices: [
      { value: 'universal', label: 'universal joint' },
      { value: 'flexible', label: 'flexible coupling' },
      { value: 'rigid', label: 'rigid coupling' },
    ],
    take: (choice) => setIn(line, path, choice),
  };
}

/** How a joint is held on its shafts, and what its set screws are like. */
function fastenerChoices(line: ShaftLine, path: string): PartChoice[] {
  const kind = getIn(line, `${path}.kind`);
  const held: PartChoice = {
    label: 'Held on its shafts by',
    hint: 'Set screws are checked against the peak torque.',
    value: typeof kind === 'string' ? kind : '',
    choices: [
      { value: '', label: 'not entered' },
      { value: 'set-screw', label: 'set screws' },
      { value: 'clamp', label: 'a clamp' },
      { value: 'pin', label: 'a pin' },
      { value: 'thread', label: 'a thread' },
      { value: 'bond', label: 'glue or solder' },
    ],
    take: (choice) => setIn(line, path, fastenerOf(choice)),
  };
  if (kind !== 'set-screw') return [held];
  return [
    held,
    {
      label: 'Size of the set screws',
      hint: 'About half as thick as the shaft, or less.',
      value: String(Number(getIn(line, `${path}.size`) ?? USUAL_SCREW)),
      choices: STOCK.setScrewSizes.map((size) => ({
        value: String(size),
        label: `M${Number((size * 1000).toFixed(1))}`,
      })),
      take: (choice) => setIn(line, `${path}.size`, Number(choice)),
    },
    yesNo(line, `${path}.flat`, { label: 'Flat under the screw', hint: 'Filed on the shaft.' }),
    yesNo(line, `${path}.threadLock`, { label: 'Thread lock', hint: 'Keeps a screw from working loose.' }),
  ];
}

/** m, M3. */
const USUAL_SCREW = 0.003;

function fastenerOf(kind: string): unknown {
  if (kind === '') return undefined;
  return kind === 'set-screw' ? { kind, size: USUAL_SCREW, count: 1 } : { kind };
}

function yesNo(line: ShaftLine, path: string, { label, hint }: { label: string; hint: string }): PartChoice {
  return {
    label,
    hint,
    value: getIn(line, path) === true ? 'yes' : 'no',
    choices: named(['no', 'yes']),
    take: (choice) => setIn(line, path, choice === 'yes'),
  };
}

function liningChoice(line: ShaftLine, path: string): PartChoice {
  const own = getIn(line, path);
  const names = Object.keys(LININGS);
  const value = typeof own === 'string' ? own : '';
  return {
    label: 'Lining',
    hint: 'What the shaft runs in; its limits come from it.',
    value,
    choices: [{ value: '', label: 'not entered' }, ...named(value === '' ? names : withOwn(names, value))],
    take: (choice) => setIn(line, path, choice === '' ? undefined : choice),
  };
}

function holdChoice(line: ShaftLine, path: string): PartChoice {
  return {
    label: 'Holds',
    hint: 'A short bush lets the shaft tilt; one longer than three diameters, or a pair, also holds its direction.',
    value: getIn(line, path) === true ? 'slope' : 'place',
    choices: [
      { value: 'place', label: 'its place' },
      { value: 'slope', label: 'its place and direction' },
    ],
    take: (choice) => setIn(line, path, choice === 'slope' ? true : undefined),
  };
}

function withOwn(names: readonly string[], own: string): readonly string[] {
  return names.includes(own) ? names : [...names, own];
}

function named(names: readonly string[]): Choice[] {
  return names.map((name) => ({ value: name, label: name }));
}
