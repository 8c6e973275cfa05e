import { MARRAM_SPEED, marramLines, marramTrials } from './marram.js';
import type { Project } from './project.js';

/** The project that the page opens with: the invented ferry Marram, her lines, and trials simulated from the first. */
export function sampleProject(): Project {
  const lines = marramLines();
  return {
    format: 'sternline-project',
    version: 1,
    name: 'Ferry Marram (sample)',
    note: 'An invented ferry: 1:40, 1.42 m, twin screw; the port line is the one under study. No figure was measured, and the trials are simulated.',
    units: 'metric',
    wantedSpeed: MARRAM_SPEED,
    lines,
    openLine: lines[0]?.id ?? '',
    trials: marramTrials(),
  };
}
