import StudyWorker from './line-study.worker.ts?worker&inline';

/** Starts the worker for studies of a line from inside the page's own script. */
export function startStudyWorker(): Worker {
  return new StudyWorker();
}
