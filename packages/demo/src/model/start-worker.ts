import InlineWorker from './analysis.worker.ts?worker&inline';

/** Starts the worker for recordings from inside the page's own script, so that it also runs from a file on disk. */
export function startWorker(): Worker {
  return new InlineWorker();
}
