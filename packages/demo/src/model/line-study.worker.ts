import { expose } from 'comlink';
import { adviceDesk } from './advice-desk.js';
import { studyLine } from './line-study.js';

expose({ study: studyLine, ...adviceDesk });
