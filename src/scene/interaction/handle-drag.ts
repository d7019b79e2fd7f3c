import type { Vec3 } from '../../math/vec3.ts';
import type { Handle } from '../../model/handles/handle.ts';
import { pullHandle } from '../../model/handles/pull.ts';
import type { ItemRef, Project } from '../../model/project.ts';
import type { Refusal } from '../../model/refusal.ts';
import type { SnapReason } from '../../model/snap/reason.ts';
import { addNotice } from '../../state/notices.ts';
import type { View } from '../../state/view.tsx';
import { refusalText } from '../../words/refusals.ts';

/** How near a line draws, in CSS pixels, and the metres that may come to. */
const REACH_PX = 9;
const REACH_M = [0.015, 0.06] as const;

/** One pull on a handle: one mark, one command a frame, one undo. */
export class HandleDrag {
  readonly handle: Handle;
  readonly start: Project;
  private readonly view: View;
  private readonly chosen: readonly ItemRef[];
  private readonly reachM: number;
  private readonly onSnap: (reasons: readonly SnapReason[]) => void;
  private wanted: { readonly byM: Vec3; readonly free: boolean } | null = null;
  private refused: Refusal | null = null;
  private frame = 0;

  constructor(
    view: View,
    handle: Handle,
    chosen: readonly ItemRef[],
    metresPerPx: number,
    onSnap: (reasons: readonly SnapReason[]) => void,
  ) {
    this.view = view;
    this.handle = handle;
    this.chosen = chosen;
    this.onSnap = onSnap;
    this.reachM = Math.min(REACH_M[1], Math.max(REACH_M[0], REACH_PX * metresPerPx));
    this.start = view.document.getState().project;
    view.document.actions.mark(this.label);
    view.session.setState({ dragging: handle.ref });
  }

  private get label(): string {
    return `${this.handle.label} of ${this.handle.ref.kind} ${this.handle.ref.id}`;
  }

  /** The hand has moved the handle by so much from where it took it; `free` lets go of snapping. */
  to(byM: Vec3, free: boolean): void {
    this.wanted = { byM, free };
    if (this.frame === 0) this.frame = requestAnimationFrame(this.apply);
  }

  /** Ends the gesture. What was refused last is said: the thing stands where it could still stand. */
  commit(): void {
    if (this.wanted) this.apply();
    this.end();
    this.view.document.actions.commit();
    const { refused } = this;
    if (!refused) return;
    const { project } = this.view.document.getState();
    const line = refusalText(refused, project.display.units, project);
    addNotice(this.view.session, { tone: 'caution', title: 'It stays where it was', lines: [line] });
  }

  cancel(): void {
    this.wanted = null;
    this.end();
    this.view.document.actions.cancel();
  }

  private readonly apply = (): void => {
    cancelAnimationFrame(this.frame);
    this.frame = 0;
    const { wanted } = this;
    this.wanted = null;
    if (!wanted) return;
    const { pairsReleased } = this.view.session.getState();
    const options = { reachM: wanted.free ? 0 : this.reachM, pairs: !pairsReleased, chosen: this.chosen };
    const { edit, reasons } = pullHandle(this.start, this.handle, wanted.byM, options);
    this.refused = this.view.document.actions.apply(this.label, () => edit);
    this.onSnap(reasons);
  };

  private end(): void {
    cancelAnimationFrame(this.frame);
    this.frame = 0;
    this.onSnap([]);
    this.view.session.setState({ dragging: null });
  }
}
