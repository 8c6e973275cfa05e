/** States before and after the present one, oldest first; plain data. */
export interface History<State> {
  readonly past: readonly State[];
  readonly present: State;
  readonly future: readonly State[];
}

/** As many steps back as are kept. */
const DEPTH = 200;

/** A history that begins with one state. */
export function startHistory<State>(present: State): History<State> {
  return { past: [], present, future: [] };
}

/** The history with a new present; what was undone before is gone. */
export function pushState<State>(history: History<State>, next: State): History<State> {
  if (Object.is(next, history.present)) return history;
  return { past: [...history.past, history.present].slice(-DEPTH), present: next, future: [] };
}

/** The history with its present changed in place, for what is not worth a step of its own. */
export function replaceState<State>(history: History<State>, present: State): History<State> {
  return { ...history, present };
}

/** One step back, or the same history at its beginning. */
export function undo<State>(history: History<State>): History<State> {
  const previous = history.past.at(-1);
  if (previous === undefined) return history;
  return {
    past: history.past.slice(0, -1),
    present: previous,
    future: [history.present, ...history.future],
  };
}

/** One step forward, or the same history at its end. */
export function redo<State>(history: History<State>): History<State> {
  const [next, ...later] = history.future;
  if (next === undefined) return history;
  return { past: [...history.past, history.present], present: next, future: later };
}
