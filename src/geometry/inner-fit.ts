import type { Box } from './point.ts';

/**
 * The shifts that keep a box within a container, as the box of shift vectors: touching is allowed, so it may be a line
 * or a point. Undefined where it does not fit. Exact on whole micrometres. For an outline pass its box.
 */
export function innerFit(container: Box, box: Box): Box | undefined {
  const shifts = {
    minX: container.minX - box.minX,
    minY: container.minY - box.minY,
    maxX: container.maxX - box.maxX,
    maxY: container.maxY - box.maxY,
  };
  return shifts.minX <= shifts.maxX && shifts.minY <= shifts.maxY ? shifts : undefined;
}
