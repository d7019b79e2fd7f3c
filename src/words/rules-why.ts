import type { RuleId } from '../analysis/rules/table.ts';

/** Why each rule is there: for a person who is not an engineer. */
export const whys: Readonly<Record<RuleId, string>> = {
  'centre-in-view': 'Nearly all speech comes from the centre. What hides it from a seat takes the words away first.',
  'centre-line': 'A voice should come from where the speaker stands in the picture, and most stand in the middle.',
  'centre-elevation': 'The ear notices when a voice comes from well above or below a face.',
  'front-azimuth':
    'Left and right open the stage. Too close together it shrinks; too far apart voices and effects leave the picture.',
  'front-elevation':
    'The front loudspeakers should sound as if they stood in the picture, near the height of the ears.',
  'front-symmetry': 'When one side stands wider than the other, everything in between is pulled to one side.',
  'front-picture-edge':
    'What walks out of the picture should be heard to walk out of it: sound and picture end together.',
  'side-azimuth': 'Surrounds are to be heard round about without being pointed at: to the side rather than behind.',
  'rear-azimuth': 'The rear pair closes the ring behind the seats. Too near together it sounds like one.',
  'wide-azimuth': 'Wides fill the gap between front and side.',
  'surround-elevation':
    'Surrounds play over the heads of the neighbours, but stay well below the upper layer where there is one.',
  'height-azimuth': 'The upper layer should lie over the seats, in front and behind.',
  'height-elevation':
    'Lower, the upper loudspeakers blend into the ring round the ears; higher, all of them sound alike.',
  'other-azimuth': 'The programme is mixed for loudspeakers in these directions.',
  'other-elevation': 'The programme is mixed for loudspeakers at these heights.',
  'image-order': 'At an outer seat the three front loudspeakers can fall into one another, and with them the stage.',
  'loudspeaker-in-view': 'High notes go in straight lines. A seat that cannot see a loudspeaker hears it dull.',
  'picture-in-view': 'Heads and chair backs in front should hide no part of the picture.',
  'picture-angle':
    'The width of the picture makes the difference between watching and being there. A small picture is regretted more often than a large one.',
  'picture-top': 'Looking up for two hours tires the neck.',
  'picture-off-axis': 'From far to the side the picture is squeezed and, on many screens, darker.',
  'picture-pixels': 'Where the pixels are coarser than the eye, the picture shows its grid.',
  sightline:
    'A line that passes 12 cm over the eyes in front just clears a head. With staggered seats one looks between heads, and 6 cm may do.',
  'worst-case-view': 'People differ by more than a head is high. This is what the shortest lose behind the tallest.',
  'nearest-loudspeaker': 'A loudspeaker close to an ear is heard for itself, and drowns those farther away.',
  'front-level-spread': 'Every seat should get the same balance of speech, music and effects.',
  'surround-level-spread': 'The seat next to a surround should not hear only that one.',
  'level-reached': 'Loudspeakers driven beyond what they can do distort, then fail.',
  'bass-level-reached': 'Deep effects ask for more than anything else. What is missing here is heard as strain.',
  'bass-spread':
    'In a room the bass differs from chair to chair far more than anything else does. Evenness can be had by placing; it cannot be had by equalising.',
  'seat-half-length': 'In the middle of the room every second deep resonance is silent, so the bass has holes.',
  'back-wall': 'At a wall the bass is heaviest, and what reflects from behind comes too soon after the sound itself.',
  'bass-sealed': 'Low notes leave through an open door or into the next room; that is not worked out here.',
  'bass-absorption':
    'The bass model takes walls that react where they are struck. Softer ones than that it cannot have.',
  'caution-loud': 'Hearing does not grow back. Level and time count together.',
  'riser-step': 'A step that is too high is fallen over in the dark.',
  'riser-headroom': 'A person standing up on the riser must not strike the ceiling.',
  'riser-window': 'The riser lifts people towards the glass.',
  'door-clear': 'In the dark, in a hurry, the way out has to be free.',
  'chairs-overlap': 'Two chairs cannot stand in the same place.',
  'things-overlap': 'Two things cannot stand in the same place.',
  'outside-room': 'What reaches through a wall will not fit, unless it is meant to be built in.',
  'picture-fits': 'What is wider or higher than its wall cannot be hung, and nobody sees the part beyond it.',
  'caution-overhead': 'What hangs over heads must not come down.',
};
