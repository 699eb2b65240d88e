import type { NewOrganisation } from '../src/features/people/index.ts';

/** Everything in the demo is invented: firms, people, places, devices and firmware. */
export const demoPassword = 'demo-only-halfsplit';

const person = (name: string, email: string, role: 'dispatcher' | 'technician' | 'support' | 'admin') => ({
  name,
  email,
  role,
  password: demoPassword,
});

export const firmZone = 'Europe/Dublin';

/** The firm that installs and looks after cinemas. */
export const firm: NewOrganisation = {
  handle: 'lanternrow',
  name: 'Lanternrow Cinema Care',
  settings: { timeZone: firmZone },
  members: [
    person('Oda Fennimar', 'oda@lanternrow.example', 'dispatcher'),
    person('Brask Ilvane', 'brask@lanternrow.example', 'technician'),
    person('Tuli Marrowen', 'tuli@lanternrow.example', 'technician'),
    person('Pim Achterlo', 'pim@lanternrow.example', 'support'),
    person('Runa Stellick', 'runa@lanternrow.example', 'admin'),
  ],
};

/** Another firm, whose second line can be shown a single packet. */
export const makersDesk: NewOrganisation = {
  handle: 'quellordesk',
  name: 'Quellor Service Desk',
  members: [
    person('Vesper Hollin', 'vesper@quellordesk.example', 'support'),
    person('Jarle Quist', 'jarle@quellordesk.example', 'admin'),
  ],
};

export const firmwareLevels = [
  { model: 'Nimbrel NP-7', minimum: '3.10', note: '3.10 repairs lost sync after a change of frame rate.' },
  { model: 'Quellor R-9', minimum: '1.8.1', note: '1.8.1 passes 18 Gbit/s on both outputs.' },
];
