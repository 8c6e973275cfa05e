export { wetDiscs } from '../line/wet-discs.js';
