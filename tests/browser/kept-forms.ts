import type { Locator, Page } from 'playwright-core';
import { expect } from 'vitest';
import type { MemberName, Size } from './stage.ts';

export type CaseIds = { readonly ticketId: string; readonly boatId: string; readonly watchedId: string };
/** A form, the way to it from the address that leads there, and what is typed into which of its fields. */
export type KeptForm = {
  readonly form: string;
  readonly who: MemberName;
  readonly size: Size;
  readonly path: (ids: CaseIds) => string;
  /** From the screen to the field, where it is folded away. */
  readonly open: (page: Page) => Promise<void>;
  readonly field: (page: Page) => Locator;
  readonly text: string;
};

const atOnce = async (): Promise<void> => undefined;
const press = (name: string | RegExp) => (page: Page) => page.getByRole('button', { name }).first().click();
const unfold = (text: string | RegExp) => (page: Page) =>
  page.locator('summary', { hasText: text }).first().click();

/** A form of each kind, in every role. `tests/web/typed-forms.test.ts` holds that all others are kept in the same way. */
export const keptForms: readonly KeptForm[] = [
  {
    form: 'what was told in the call, corrected',
    who: 'oda',
    size: 'desk',
    path: ({ ticketId }) => `/app/tickets/${ticketId}`,
    open: unfold('Correct or add to it'),
    field: (page) => page.getByLabel('Anything else'),
    text: 'The dog is friendly.',
  },
  {
    form: 'who goes, and when',
    who: 'oda',
    size: 'desk',
    path: ({ ticketId }) => `/app/tickets/${ticketId}`,
    open: atOnce,
    field: (page) => page.getByLabel('Visit', { exact: true }),
    text: '2027-01-12T09:30',
  },
  {
    form: 'a note at the desk',
    who: 'oda',
    size: 'desk',
    path: ({ ticketId }) => `/app/tickets/${ticketId}`,
    open: atOnce,
    field: (page) => page.getByLabel('Note', { exact: true }),
    text: 'Call before noon.',
  },
  {
    form: 'a new site',
    who: 'oda',
    size: 'desk',
    path: () => '/app/sites/new',
    open: atOnce,
    field: (page) => page.getByLabel('Client', { exact: true }),
    text: 'Thistle Hall',
  },
  {
    form: 'what the client tried besides',
    who: 'oda',
    size: 'desk',
    path: ({ ticketId }) => `/app/call/${ticketId}`,
    open: atOnce,
    field: (page) => page.locator('form textarea').first(),
    text: 'Turned the receiver round.',
  },
  {
    form: 'a reason, in a dialog',
    who: 'brask',
    size: 'phone',
    path: ({ watchedId }) => `/app/visits/${watchedId}/triage`,
    open: press('Undo the last'),
    field: (page) => page.getByRole('dialog').getByRole('textbox'),
    text: 'The lamp outside flickered, not the picture.',
  },
  {
    form: 'what a file is about',
    who: 'brask',
    size: 'phone',
    path: ({ watchedId }) => `/app/visits/${watchedId}/evidence`,
    open: atOnce,
    field: (page) => page.getByLabel('What is it about?'),
    text: 'Read at the wall plate.',
  },
  {
    form: 'the address that a packet is shown to',
    who: 'pim',
    size: 'desk',
    path: ({ ticketId }) => `/app/cases/${ticketId}`,
    open: async (page) => {
      await unfold('Case packets')(page);
      await unfold('Shown to')(page);
    },
    field: (page) => page.getByLabel('Address of a second-line member elsewhere').first(),
    text: 'an address half copied',
  },
  {
    form: 'leaving out what the client reported',
    who: 'oda',
    size: 'desk',
    path: ({ boatId }) => `/app/tickets/${boatId}`,
    open: press(/^Leave out what was reported/),
    field: (page) => page.getByLabel('Why is it no occurrence?'),
    text: 'They had switched it off.',
  },
  {
    form: 'why a text is erased',
    who: 'runa',
    size: 'desk',
    path: ({ boatId }) => `/app/tickets/${boatId}/texts`,
    open: press(/^Erase: /),
    field: (page) => page.getByRole('dialog').getByLabel('Why'),
    text: 'Names a neighbour.',
  },
  {
    form: 'the firm’s numbers',
    who: 'runa',
    size: 'desk',
    path: () => '/app/numbers',
    open: atOnce,
    field: (page) => page.getByLabel('Name of the firm'),
    text: 'Lanternrow Cinema and Sound',
  },
  {
    form: 'a firmware level',
    who: 'runa',
    size: 'desk',
    path: () => '/app/numbers/firmware',
    open: atOnce,
    field: (page) => page.getByLabel('Model').last(),
    text: 'BL-90',
  },
  {
    form: 'a figure of the fault model',
    who: 'runa',
    size: 'desk',
    path: () => '/app/numbers/fault-model',
    open: async (page) => {
      const group = page.locator('details', { hasText: 'How often cables fail' });
      const fields = group.getByRole('spinbutton');
      // What is typed in it and not saved unfolds it, once this device has read it.
      await expect
        .poll(async () => {
          if ((await fields.count()) === 0) await group.locator('summary').click();
          return fields.count();
        })
        .toBeGreaterThan(0);
    },
    field: (page) =>
      page.locator('details', { hasText: 'How often cables fail' }).getByRole('spinbutton').first(),
    text: '0.125',
  },
  {
    form: 'a row of words of logs',
    who: 'runa',
    size: 'desk',
    path: () => '/app/numbers/logs',
    open: async (page) => {
      await page.getByRole('button', { name: 'Save', exact: true }).waitFor();
      // Begun before, it is still there.
      if ((await page.getByLabel('What it means').count()) === 0) await press('Add a row')(page);
    },
    field: (page) => page.getByLabel('What it means').last(),
    text: 'linkLostForLong',
  },
  {
    form: 'an own kind of change',
    who: 'runa',
    size: 'desk',
    path: () => '/app/numbers/changes',
    open: async (page) => {
      await page.getByRole('button', { name: 'Save', exact: true }).waitFor();
      if ((await page.locator('.admin-form input').count()) === 0) await press(/^Add/)(page);
    },
    field: (page) => page.locator('.admin-form input').first(),
    text: 'Turn the rack fan off',
  },
  {
    form: 'a new member',
    who: 'runa',
    size: 'desk',
    path: () => '/app/members',
    open: press('Add a member'),
    field: (page) => page.getByRole('dialog').getByLabel('Name'),
    text: 'Nell Varrick',
  },
];
