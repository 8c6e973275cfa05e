import { AdviceChangedEvent, LineAddedEvent, type TolerancesChangedEvent } from './leaves/advice-events.js';
import type { Project, ProjectLine } from './model/project.js';
import { withAdded, withAdvice } from './model/project-edits.js';

/** What advice makes of a project, and what is worth telling of it. */
export interface TakenAdvice {
  readonly project: Project;
  readonly notice?: string;
}

/** The project after something was found out, a changed line kept, or tolerances settled. */
export function takeAdvice(
  project: Project,
  open: ProjectLine,
  event: AdviceChangedEvent | LineAddedEvent | TolerancesChangedEvent,
): TakenAdvice {
  if (event instanceof AdviceChangedEvent) return { project: withAdvice(project, open.id, event.advice) };
  if (!(event instanceof LineAddedEvent)) return { project: { ...project, tolerances: event.tolerances } };
  return {
    project: withAdded(project, open, event.line),
    notice: `“${event.line.name}” is now a layout of its own, and open. Undo takes it away.`,
  };
}
