import type { z } from 'zod';
import type { ChainInput } from '../shared/contract/chain.ts';
import type { siteInput } from '../shared/contract/site.ts';
import { boatHouse, gableRoom, studySet } from './chains.ts';

type DemoSite = { key: 'gable' | 'study' | 'boat'; site: z.input<typeof siteInput>; chain: ChainInput };

export const demoSites: DemoSite[] = [
  {
    key: 'gable',
    site: {
      client: 'Family Corrowin',
      address: '4 Thistle Rise, Marlhaven',
      contact: { name: 'Edda Corrowin', phone: '+353 1 555 0142', email: null, hours: 'after 16:00' },
      accessNotes: 'Ring twice. The rack is in the cupboard under the stairs; the key hangs inside the door.',
      travelNotes: 'Park in the yard.',
      travelMin: 25,
      hazards: [
        { kind: 'ladder', text: 'Projector hangs at 3.4 m: ladder and a second person.' },
        { kind: 'laser', text: 'Projector has a laser light source: never look into the lens.' },
        { kind: 'cableInWall', text: 'The cable to the projector runs in the wall, behind a fire stop.' },
      ],
    },
    chain: gableRoom,
  },
  {
    key: 'study',
    site: {
      client: 'Dr. Lisk Amberwell',
      address: '19 Harrow Lane, Ostermere',
      contact: { name: 'Lisk Amberwell', phone: '+353 1 555 0177', email: null, hours: 'weekday mornings' },
      accessNotes: 'Weekday mornings only.',
      hazards: [],
    },
    chain: studySet,
  },
  {
    key: 'boat',
    site: {
      client: 'Penhollow Boat House',
      address: 'Quay 2, Saltmere',
      contact: { name: 'Maro Penhollow', phone: '+353 1 555 0123', email: null },
      accessNotes: 'Sign in at the slipway office.',
      travelMin: 50,
      travelNotes: 'The quay floods at spring tide: check before you go.',
      hazards: [
        { kind: 'mains', text: 'Two supplies in the rack. Mains work is for a licensed electrician.' },
        { kind: 'cableAcrossFloor', text: 'Guests walk through: tape down anything laid across the floor.' },
      ],
    },
    chain: boatHouse,
  },
];
