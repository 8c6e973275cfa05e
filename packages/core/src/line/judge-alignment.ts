import { alignmentLimits } from './alignment-limits.js';
import type { AlignmentFigure, AlignmentGrade, AlignmentVerdict, InBothPlanes } from './shim-types.js';

/**
 * Misalignment against the limits of a speed, both planes together by the root of squares.
 *
 * The axis of a spacer runs from one shaft to the other: its angle with either is the offset that the other has at the
 * far end of the spacer, over its length.
 */
export function judgeAlignment(
  { offset, angularity }: { readonly offset: InBothPlanes; readonly angularity: InBothPlanes },
  { speed, spacer }: { readonly speed: number; readonly spacer: number | undefined },
): AlignmentVerdict {
  const limits = alignmentLimits(speed);
  const { basis } = limits;
  if (spacer !== undefined) {
    const far = {
      vertical: offset.vertical - angularity.vertical * spacer,
      horizontal: offset.horizontal - angularity.horizontal * spacer,
    };
    const angle = { value: Math.max(together(offset), together(far)) / spacer, ...limits.spacer };
    return { grade: gradeOf([angle]), spacer: angle, basis };
  }
  const figures = {
    offset: { value: together(offset), ...limits.offset },
    angularity: { value: together(angularity), ...limits.angularity },
  };
  return { grade: gradeOf([figures.offset, figures.angularity]), ...figures, basis };
}

function together({ vertical, horizontal }: InBothPlanes): number {
  return Math.hypot(vertical, horizontal);
}

function gradeOf(figures: readonly AlignmentFigure[]): AlignmentGrade {
  if (figures.some(({ value, acceptable }) => value > acceptable)) return 'outside';
  return figures.every(({ value, excellent }) => value <= excellent) ? 'excellent' : 'acceptable';
}
