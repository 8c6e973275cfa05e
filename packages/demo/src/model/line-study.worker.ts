import { expose } from 'comlink';
import { studyLine } from './line-study.js';

expose({ study: studyLine });
