import { engineTriples } from '../../../src/analysis/inputs/engine-axes.ts';
import { type Damping, earTriples, roomSpec } from '../../../src/analysis/inputs.ts';
import { createRoomField } from '../../../src/engines/bass/create-room-field.ts';
import type { RoomField } from '../../../src/engines/bass/room-field.ts';
import type { Project } from '../../../src/model/project.ts';
import type { RoomResponses, StudyProgress } from '../../../src/proposals/responses.ts';
import { projectOf } from '../analysis/rooms.ts';

/** A box of 5.2 x 6.8 x 2.6 m with two rows of three and two subwoofers at the front, changed by what is passed. */
export const boxRoom = (over: Readonly<Record<string, unknown>> = {}): Project =>
  projectOf({
    format: 'parterre/project',
    version: 1,
    room: { plan: { shape: 'rectangle', widthM: 5.2, lengthM: 6.8 }, ceiling: { shape: 'flat', heightM: 2.6 } },
    picture: { kind: 'screen', widthM: 2.4, bottomM: 0.9, acousticallyTransparent: true },
    rows: [
      { id: 'front', eyeZM: 3.3, seats: [-0.8, 0, 0.8].map((xM, i) => ({ id: `a${i + 1}`, xM })) },
      { id: 'back', eyeZM: 4.6, seats: [-0.8, 0, 0.8].map((xM, i) => ({ id: `b${i + 1}`, xM })) },
    ],
    loudspeakers: [{ id: 'C', channel: 'M+000', atM: [0, 1.4, 0.2], mount: 'wall', sizeM: [0.5, 0.2, 0.2] }],
    subwoofers: [
      { id: 'S1', atM: [-1.2, 0.2, 0.25] },
      { id: 'S2', atM: [1.2, 0.2, 0.25] },
    ],
    ...over,
  });

/** Responses straight from the engine, one field a damping. */
export const engineResponses = (project: Project): RoomResponses => {
  const fields = new Map<Damping, RoomField>();
  return (placesM, frequenciesHz, damping = 'nominal') => {
    const field = fields.get(damping) ?? createRoomField(roomSpec(project, damping), 'fine');
    fields.set(damping, field);
    return field.unitResponses(engineTriples(project, placesM), earTriples(project), frequenciesHz);
  };
};

/** Runs a study to its end; its shares of work never fall and stay within 0 and 1. */
export const finish = <T>(study: Generator<StudyProgress, T>): { result: T; shares: number[] } => {
  const shares: number[] = [];
  for (;;) {
    const step = study.next();
    if (step.done) return { result: step.value, shares };
    shares.push(step.value.share);
  }
};
