import { readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('..', import.meta.url));

/** Which rooms of the core each room may import from, its own aside. DEVELOPERS.md says why. */
const CORE: Record<string, readonly string[]> = {
  internal: [],
  numerics: ['internal'],
  line: ['internal', 'numerics'],
  motion: ['internal', 'numerics', 'line'],
  whirl: ['internal', 'numerics', 'line'],
  recording: ['internal', 'numerics'],
  spectrum: ['internal', 'numerics', 'recording'],
  orders: ['internal', 'numerics', 'recording', 'spectrum'],
  balance: ['internal', 'numerics', 'recording', 'spectrum'],
  drive: ['internal', 'numerics', 'line'],
  twist: ['internal', 'numerics', 'line', 'motion'],
  loads: ['internal', 'numerics', 'line', 'motion', 'drive', 'twist'],
  study: ['internal', 'numerics', 'line', 'motion', 'whirl', 'drive', 'twist', 'loads'],
  simulate: ['internal', 'numerics', 'line', 'motion', 'whirl', 'recording'],
  diagnosis: [
    'internal',
    'numerics',
    'line',
    'motion',
    'whirl',
    'recording',
    'spectrum',
    'orders',
    'balance',
    'study',
  ],
};

/** The same for the demo; `core` stands for @sternline/core. */
const DEMO: Record<string, readonly string[]> = {
  styles: [],
  charts: ['styles'],
  elements: ['styles', 'charts'],
  model: ['core'],
  leaves: ['core', 'model', 'charts', 'elements', 'styles'],
};

function sources(folder: string): string[] {
  return readdirSync(folder).flatMap((entry) => {
    const path = join(folder, entry);
    if (statSync(path).isDirectory()) return sources(path);
    return path.endsWith('.ts') && !path.endsWith('.d.ts') ? [path] : [];
  });
}

function imports(file: string): string[] {
  const text = readFileSync(file, 'utf8').replace(/\/\*[\s\S]*?\*\//g, '');
  return [...text.matchAll(/(?:from|import)\s*\(?\s*['"]([^'"]+)['"]/g)].map((match) => match[1]!);
}

function roomOf(base: string, file: string): string {
  const [first, ...rest] = relative(base, file).split(/[\\/]/);
  return rest.length === 0 ? '' : first!;
}

function violations(base: string, table: Record<string, readonly string[]>): string[] {
  return sources(base).flatMap((file) => {
    const room = roomOf(base, file);
    if (room === '') return [];
    const allowed = table[room];
    if (!allowed) return [`${relative(root, file)}: room ${room} is not in the table`];
    return imports(file).flatMap((target) => {
      const other = target.startsWith('.')
        ? roomOf(base, resolve(dirname(file), target))
        : target.startsWith('@sternline/core')
          ? 'core'
          : undefined;
      if (other === undefined || other === room || allowed.includes(other)) return [];
      return [`${relative(root, file)} imports ${target}`];
    });
  });
}

describe('imports run one way', () => {
  it('in the core', () => {
    expect(violations(join(root, 'packages/core/src'), CORE)).toEqual([]);
  });

  it('in the demo', () => {
    expect(violations(join(root, 'packages/demo/src'), DEMO)).toEqual([]);
  });

  it('finds a wrong import when there is one', () => {
    const bent = { ...CORE, motion: ['internal'] };
    expect(violations(join(root, 'packages/core/src'), bent)).not.toEqual([]);
  });
});

describe('the core', () => {
  const files = sources(join(root, 'packages/core/src'));

  it('reads no clock and draws no chance', () => {
    // Page, file and process are out of reach already: the compiler knows no such names in the core (no DOM, no Node types).
    const forbidden = /\bglobalThis\b|\bDate\.now\b|\bnew Date\(\)|\bMath\.random\b/;
    const guilty = files.filter((file) => {
      const text = readFileSync(file, 'utf8');
      return forbidden.test(text.replace(/\/\*[\s\S]*?\*\/|\/\/.*/g, ''));
    });
    expect(guilty.map((file) => relative(root, file))).toEqual([]);
  });

  it('has no Node module among its imports', () => {
    const guilty = files.filter((file) => imports(file).some((target) => target.startsWith('node:')));
    expect(guilty).toEqual([]);
  });

  it('re-exports from its index, and nothing else stands there', () => {
    const index = readFileSync(join(root, 'packages/core/src/index.ts'), 'utf8');
    const code = index
      .replace(/\/\*[\s\S]*?\*\/|\/\/.*/g, '')
      .replace(/\s+/g, ' ')
      .trim();
    expect(code.replace(/export (type )?(\*|\{[^}]*\}) from '[^']+';/g, '').trim()).toBe('');
  });
});
