import type { Vec3 } from '../../math/vec3.ts';
import type { Handle } from '../../model/handles/handle.ts';
import { pullAsFar } from '../../model/handles/pull.ts';
import { axesCarriedM } from '../../model/handles/pull-surfaces.ts';
import type { ItemRef, Project } from '../../model/project.ts';
import type { Refusal } from '../../model/refusal.ts';
import type { SnapReason } from '../../model/snap/reason.ts';
import { addNotice } from '../../state/notices.ts';
import type { View } from '../../state/view.tsx';
import { refusalText } from '../../words/refusals.ts';

/** How near a line draws, in CSS pixels, and the metres that may come to. */
const REACH_PX = 9;
const REACH_M = [0.015, 0.06] as const;

/** What there is to see of a pull besides the document. */
export interface DragShown {
  /** Why it stopped where it did, and what is in its way. */
  readonly reasons: readonly SnapReason[];
  readonly stopped: Refusal | null;
  /** How far the document's axes have gone under what stands still, metres. */
  readonly carriedM: Vec3;
}

/** One pull on a handle: one mark, one command a frame, one undo. */
export class HandleDrag {
  readonly handle: Handle;
  readonly start: Project;
  private readonly view: View;
  private readonly chosen: readonly ItemRef[];
  private readonly reachM: number;
  private readonly show: (shown: DragShown) => void;
  private wanted: { readonly byM: Vec3; readonly free: boolean } | null = null;
  private refused: Refusal | null = null;
  private carriedM: Vec3 = [0, 0, 0];
  private frame = 0;

  constructor(
    view: View,
    handle: Handle,
    chosen: readonly ItemRef[],
    metresPerPx: number,
    show: (shown: DragShown) => void,
  ) {
    this.view = view;
    this.handle = handle;
    this.chosen = chosen;
    this.show = show;
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
    const title = project === this.start ? 'It stays where it was' : 'It goes no farther';
    addNotice(this.view.session, { tone: 'caution', title, lines: [line] });
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
    const { edit, reasons, stopped = null } = pullAsFar(this.start, this.handle, wanted.byM, options);
    this.refused = this.view.document.actions.apply(this.label, () => edit) ?? stopped;
    const { project } = this.view.document.getState();
    this.carriedM = axesCarriedM(this.start, project, this.handle);
    this.show({ reasons, stopped, carriedM: this.carriedM });
  };

  private end(): void {
    cancelAnimationFrame(this.frame);
    this.frame = 0;
    this.show({ reasons: [], stopped: null, carriedM: this.carriedM });
    this.view.session.setState({ dragging: null });
  }
}
