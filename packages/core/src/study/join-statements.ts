import { makeStatement } from './statement.js';
import type { Statement } from './types.js';

/** Several statements in one, their figures kept apart by letters before their names. */
export function joinStatements(
  statements: readonly Pick<Statement, 'template' | 'figures'>[],
  between: string,
): Statement {
  const parts = statements.map(({ template, figures }, i) => {
    const letter = String.fromCharCode(97 + i);
    return {
      template: template.replace(/\{(\w+)\}/g, (whole, name: string) =>
        figures[name] ? `{${letter}_${name}}` : whole,
      ),
      figures: Object.entries(figures).map(([name, value]) => [`${letter}_${name}`, value] as const),
    };
  });
  return makeStatement(
    parts.map(({ template }) => template).join(between),
    Object.fromEntries(parts.flatMap(({ figures }) => figures)),
  );
}
