import type { ItemRef, Project } from '../../model/project.ts';
import type { SessionState } from '../../state/session.ts';
import type { Part } from './parts.ts';

const SELECTED_GLOW = 1;
const HOVERED_GLOW = 0.45;
const SPOTLIT_GLOW = 0.8;
const DIMMED = 0.62;

/** Whether a part belongs to the named thing; a row takes its seats along. */
const belongs = (project: Project, part: Part, ref: ItemRef): boolean => {
  const { kind, id } = part.solid;
  if (kind === ref.kind && id === ref.id) return true;
  if (ref.kind !== 'row') return false;
  if (kind === 'riser') return id === ref.id;
  return kind === 'seat' && project.rows.some((row) => row.id === ref.id && row.seats.some((seat) => seat.id === id));
};

/** Sets glow, dimming and visibility of every part from what the person points at and where they sit. */
export const accentsOf = (project: Project, session: SessionState, parts: Iterable<Part>): void => {
  const { selection, alsoSelected, hovered, spotlight, mode, seatId, overlays } = session;
  const sitting = mode === 'sit';
  for (const part of parts) {
    const { kind, id, part: name } = part.solid;
    const lit = spotlight?.items.some((ref) => belongs(project, part, ref)) ?? false;
    part.glow = 0;
    if (hovered && belongs(project, part, hovered)) part.glow = HOVERED_GLOW;
    if (lit) part.glow = SPOTLIT_GLOW;
    const chosen = selection !== null && [selection, ...alsoSelected].some((ref) => belongs(project, part, ref));
    if (chosen) part.glow = SELECTED_GLOW;
    part.dim = spotlight && !lit ? DIMMED : 1;
    if (kind === 'person') part.mesh.visible = overlays.people && !(sitting && id === seatId);
    if (kind === 'seat' && /head/.test(name)) part.mesh.visible = !(sitting && id === seatId);
  }
};
