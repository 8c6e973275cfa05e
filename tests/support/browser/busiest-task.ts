import type { Browser, Page } from 'playwright-core';

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  /** µs of the thread's own time, which a busy machine does not stretch. */
  readonly tdur?: number;
  readonly args: { readonly name?: string };
}

/**
 * The longest that one task held the page's thread during some work.
 *
 * @returns ms of the thread's own time
 */
export async function busiestTask(
  browser: Browser,
  { page }: { readonly page: Page },
  work: () => Promise<void>,
): Promise<number> {
  await browser.startTracing(page, { categories: ['toplevel', 'devtools.timeline'] });
  await work();
  const { traceEvents } = JSON.parse((await browser.stopTracing()).toString()) as {
    readonly traceEvents: readonly TraceEvent[];
  };
  const pages = traceEvents.filter(
    ({ name, args }) => name === 'thread_name' && args.name === 'CrRendererMain',
  );
  const tasks = traceEvents.filter(
    ({ name, ph, pid, tid }) =>
      ph === 'X' &&
      name.endsWith('RunTask') &&
      pages.some((thread) => thread.pid === pid && thread.tid === tid),
  );
  if (tasks.length === 0) throw new Error('busiestTask: the trace holds no task of the page');
  return tasks.reduce((most, { tdur = 0 }) => Math.max(most, tdur), 0) / 1000;
}
