/** Places on the joint and on the drawing of it. */
import type { Handle, PlanOnPaper } from '../answers';
import { ROOM } from './room';

/** A place on the joint, mm along the flask and across it. */
export type Place = readonly [number, number];

/** Where a place stands on the drawing as it is shown, in shares of its width and height. */
export function onDrawing(plan: PlanOnPaper, [x, y]: Place): { left: number; top: number } {
  const [right = 0, down = 0] = plan.corner_mm;
  const [wide = 1, tall = 1] = plan.size_mm;
  return {
    left: (right + x / plan.smaller + ROOM * wide) / (wide * (1 + 2 * ROOM)),
    top: (down - y / plan.smaller) / tall,
  };
}

/** How far on the joint a move over the drawing goes, mm; moves in shares of its width and height. */
export function onJoint(plan: PlanOnPaper, right: number, down: number): Place {
  const [wide = 1, tall = 1] = plan.size_mm;
  return [right * wide * (1 + 2 * ROOM) * plan.smaller, -down * tall * plan.smaller];
}

/** A place moved, to the whole mm, within the flask. */
export function moved(plan: PlanOnPaper, [x, y]: Place, [right, up]: Place): Place {
  const [long = 0, across = 0] = plan.inside_mm;
  const within = (mm: number, most: number) => Math.min(most, Math.max(0, Math.round(mm)));
  return [within(x + right, long), within(y + up, across)];
}

/** What is typed for all places of a kind with one of them moved. */
export function typedWith(handles: readonly Handle[], which: Handle, to: Place): string[] {
  return handles
    .filter(({ key }) => key === which.key)
    .map((handle) => (handle === which ? to.join(', ') : handle.text));
}
