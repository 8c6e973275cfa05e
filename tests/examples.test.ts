import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { runInThisContext } from 'node:vm';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import * as core from '@sternline/core';

/*
 * Every `@example` of the core and every ```ts block of the README and docs is run here.
 * A line that ends in `// → value` states what the expression on it gives:
 * `speedFluctuation(line).degree // → 0.0624` compares to the digits written,
 * `// → throws text` expects an error whose message holds the text.
 */
const root = fileURLToPath(new URL('..', import.meta.url));

interface Example {
  readonly name: string;
  readonly code: string;
}

function sources(folder: string, ending: string): string[] {
  return readdirSync(folder).flatMap((entry) => {
    const path = join(folder, entry);
    if (statSync(path).isDirectory()) return sources(path, ending);
    return path.endsWith(ending) ? [path] : [];
  });
}

function docExamples(file: string): Example[] {
  const text = readFileSync(file, 'utf8');
  return [...text.matchAll(/@example\s*\n((?:\s*\*(?!\/| @).*\n)+)/g)].map((match, index) => ({
    name: `${relative(root, file)} example ${index + 1}`,
    code: match[1]!
      .replace(/^\s*\* ?/gm, '')
      .replace(/^```\w*\n/, '')
      .replace(/```\s*$/, ''),
  }));
}

function fencedExamples(file: string): Example[] {
  const text = readFileSync(file, 'utf8');
  return [...text.matchAll(/```(?:ts|js)\n([\s\S]*?)```/g)].map((match, index) => ({
    name: `${relative(root, file)} block ${index + 1}`,
    code: match[1]!,
  }));
}

/** Turns stated results into checks. */
function instrument(code: string): string {
  return code
    .replace(/^import .*@sternline\/core.*$/gm, '')
    .split('\n')
    .map((line) => {
      const stated = /^(\s*)(.*?);?\s*\/\/ → (.*)$/.exec(line);
      if (!stated) return line;
      const [, , expression, value] = stated;
      const declared = /^(?:const|let)\s+(\w+)\s*=/.exec(expression!);
      if (declared)
        return `${expression}; await __state(async () => ${declared[1]!}, ${JSON.stringify(value)});`;
      return `await __state(async () => (${expression}), ${JSON.stringify(value)});`;
    })
    .join('\n');
}

function agrees(actual: unknown, stated: unknown, text: string): void {
  if (typeof stated === 'number' && typeof actual === 'number') {
    const decimals = /\.(\d+)(?!.*\d\.\d)/.exec(text)?.[1]?.length ?? 0;
    const exponent = Number(/e([+-]?\d+)/i.exec(text)?.[1] ?? 0);
    expect(Math.abs(actual - stated)).toBeLessThanOrEqual(0.5000001 * 10 ** (exponent - decimals));
    return;
  }
  expect(actual).toEqual(stated);
}

async function state(run: () => Promise<unknown>, text: string): Promise<void> {
  if (text.startsWith('throws ')) {
    await expect(run()).rejects.toThrow(text.slice('throws '.length));
    return;
  }
  const actual = await run();
  const stated: unknown = runInThisContext(`(${text.replace(/\s+(rad\/s|Hz|m\/s²|rad|mm|m)$/, '')})`);
  if (Array.isArray(stated) && (Array.isArray(actual) || ArrayBuffer.isView(actual))) {
    const numbers = text.replace(/^\[|\]$/g, '').split(',');
    const values = Array.from(actual as ArrayLike<unknown>);
    expect(values).toHaveLength(stated.length);
    stated.forEach((item: unknown, i) => {
      agrees(values[i], item, numbers[i]!.trim());
    });
    return;
  }
  agrees(actual, stated, text);
}

async function run(example: Example): Promise<number> {
  let statements = 0;
  const code = ts.transpile(instrument(example.code), {
    target: ts.ScriptTarget.ES2022,
    module: ts.ModuleKind.ESNext,
  });
  const names = Object.keys(core);
  const used = names.filter((name) => !new RegExp(`(?:const|let|function)\\s+${name}\\b`).test(code));
  const body = runInThisContext(`(async (${[...used, '__state'].join(', ')}) => {${code}\n})`) as (
    ...values: unknown[]
  ) => Promise<void>;
  await body(
    ...used.map((name) => (core as Record<string, unknown>)[name]),
    async (value: () => Promise<unknown>, text: string) => {
      statements += 1;
      await state(value, text);
    },
  );
  return statements;
}

const examples = [
  ...sources(join(root, 'packages/core/src'), '.ts').flatMap(docExamples),
  ...[join(root, 'README.md'), ...sources(join(root, 'docs'), '.md')].flatMap(fencedExamples),
];

describe('examples in the documentation', () => {
  it.each(examples)('$name', async (example) => {
    expect(await run(example), 'an example states at least one result with // →').toBeGreaterThan(0);
  });

  it('every public function has one', () => {
    const documented = new Set(
      sources(join(root, 'packages/core/src'), '.ts').flatMap((file) => {
        const text = readFileSync(file, 'utf8');
        return [...text.matchAll(/\/\*\*((?:(?!\*\/)[\s\S])*)\*\/\s*export (?:async )?function (\w+)/g)]
          .filter((match) => match[1]!.includes('@example'))
          .map((match) => match[2]!);
      }),
    );
    const isClass = (value: unknown) => typeof value === 'function' && /^class\b/.test(String(value));
    const functions = Object.entries(core as Record<string, unknown>)
      .filter(([, value]) => typeof value === 'function' && !isClass(value))
      .map(([name]) => name);
    expect(functions.filter((name) => !documented.has(name))).toEqual([]);
  });
});
