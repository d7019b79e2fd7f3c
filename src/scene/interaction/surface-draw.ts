import { addOnSurface, rectOn, type SurfaceRect, usualRect } from '../../model/commands/on-surface.ts';
import type { Project } from '../../model/project.ts';
import type { SnapReason } from '../../model/snap/reason.ts';
import { snapOnSurface } from '../../model/snap/surface.ts';
import { chosenOnly } from '../../state/chosen.ts';
import { addNotice } from '../../state/notices.ts';
import type { SessionState } from '../../state/session.ts';
import type { View } from '../../state/view.tsx';
import { refusalText } from '../../words/refusals.ts';
import type { Ray } from './handle-motion.ts';
import { onSurface, type SurfacePoint } from './surface-aim.ts';

type Tool = NonNullable<SessionState['tool']>;

/** What is being drawn, as the marks show it. */
export interface Drawn {
  readonly point: SurfacePoint;
  readonly rect: SurfaceRect;
}

const REACH_M = 0.05;

/** One rectangle drawn on a surface, from the press to the release: one command, one undo. */
export class SurfaceDraw {
  private readonly view: View;
  private readonly tool: Tool;
  private readonly from: SurfacePoint;
  private readonly project: Project;
  private readonly corner: readonly [number, number];
  private rect: SurfaceRect | null = null;
  private readonly show: (drawn: Drawn | null, reasons: readonly SnapReason[]) => void;

  constructor(
    view: View,
    tool: Tool,
    from: SurfacePoint,
    show: (drawn: Drawn | null, reasons: readonly SnapReason[]) => void,
  ) {
    this.view = view;
    this.tool = tool;
    this.from = from;
    this.show = show;
    this.project = view.document.getState().project;
    this.corner = snapOnSurface(this.project, from.frame, [from.alongM, from.upM], REACH_M).atM;
  }

  to(ray: Ray, free: boolean): void {
    const point = onSurface(ray, this.from.frame);
    if (!point) return;
    const { atM, reasons } = snapOnSurface(
      this.project,
      this.from.frame,
      [point.alongM, point.upM],
      free ? 0 : REACH_M,
    );
    const [a, b] = [this.corner, atM];
    const wanted = {
      fromM: Math.min(a[0], b[0]),
      widthM: Math.abs(a[0] - b[0]),
      bottomM: Math.min(a[1], b[1]),
      heightM: Math.abs(a[1] - b[1]),
    };
    this.rect = rectOn(this.from.frame, wanted) ?? null;
    this.show(this.rect && { point: this.from, rect: this.rect }, reasons);
  }

  /** The rectangle becomes a thing and is chosen. A press that did not move places one of a usual size round it. */
  commit(moved: boolean): void {
    const { view, tool, from } = this;
    this.show(null, []);
    const rect = moved ? this.rect : this.usual();
    const edge = this.project.room.plan.shape === 'polygon' ? from.edge : null;
    const small = { fromM: from.alongM, widthM: 0, bottomM: from.upM, heightM: 0 };
    const { edit, ref } = addOnSurface(this.project, tool.kind, tool.what, from.surface, edge, rect ?? small);
    const refusal = view.document.actions.apply(`Add ${tool.what}`, () => edit);
    if (!refusal && ref) {
      view.session.setState({ ...chosenOnly([ref]), tool: null });
      return;
    }
    if (!refusal) return;
    const { units } = this.project.display;
    addNotice(view.session, {
      tone: 'caution',
      title: 'Nothing was drawn',
      lines: [refusalText(refusal, units, this.project)],
    });
  }

  cancel(): void {
    this.show(null, []);
  }

  private usual(): SurfaceRect | null {
    const { project, tool, from } = this;
    const edge = project.room.plan.shape === 'polygon' ? from.edge : null;
    const usual = usualRect(project, tool.kind, tool.what, from.surface, edge);
    if (!usual) return null;
    const fromM = Math.min(Math.max(0, this.corner[0] - usual.widthM / 2), from.frame.alongM - usual.widthM);
    const level = from.edge === null;
    const bottomM = level ? Math.max(0, this.corner[1] - usual.heightM / 2) : usual.bottomM;
    return (
      rectOn(from.frame, { ...usual, fromM: Math.round(fromM * 20) / 20, bottomM: Math.round(bottomM * 20) / 20 }) ??
      null
    );
  }
}
