import type { Vec3 } from '../../math/vec3.ts';
import type { ItemRef, Project } from '../../model/project.ts';
import type { View } from '../../state/view.tsx';
import { dragBy } from './drag.ts';

/** One drag of a thing over the floor: one mark, one command a frame, one undo. */
export class FloorDrag {
  private readonly start: Project;
  private wanted: { readonly byXM: number; readonly byZM: number } | null = null;
  private frame = 0;
  private readonly view: View;
  readonly ref: ItemRef;
  /** Where the hand took hold. */
  private readonly heldM: Vec3;

  constructor(view: View, ref: ItemRef, heldM: Vec3) {
    this.view = view;
    this.ref = ref;
    this.heldM = heldM;
    this.start = view.document.getState().project;
    view.document.actions.mark(`Move ${ref.kind} ${ref.id}`);
    view.session.setState({ dragging: ref });
  }

  get heightM(): number {
    return this.heldM[1];
  }

  /** The hand is over this point of the level it took hold at. */
  to(atM: Vec3): void {
    this.wanted = { byXM: atM[0] - this.heldM[0], byZM: atM[2] - this.heldM[2] };
    if (this.frame === 0) this.frame = requestAnimationFrame(this.apply);
  }

  commit(): void {
    if (this.wanted) this.apply();
    this.end();
    this.view.document.actions.commit();
  }

  cancel(): void {
    this.wanted = null;
    this.end();
    this.view.document.actions.cancel();
  }

  private readonly apply = (): void => {
    cancelAnimationFrame(this.frame);
    this.frame = 0;
    const { wanted, ref, start } = this;
    this.wanted = null;
    if (!wanted) return;
    this.view.document.actions.apply(`Move ${ref.kind} ${ref.id}`, (project) =>
      dragBy(project, start, ref, wanted.byXM, wanted.byZM),
    );
  };

  private end(): void {
    cancelAnimationFrame(this.frame);
    this.frame = 0;
    this.view.session.setState({ dragging: null });
  }
}
