import { AdviceClient } from '../model/advice-client.js';
import { startStudyWorker } from '../model/start-study-worker.js';

/** The one way of all leaves to the work of giving advice. */
export const adviceClient = new AdviceClient(typeof Worker === 'undefined' ? undefined : startStudyWorker);
