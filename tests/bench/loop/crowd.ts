import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { Readable } from 'node:stream';
import { metadataHeader } from '../../features/evidence/tus-client.ts';
import type { TestApp, TestMember } from '../../support/test-app.ts';

export type Target = {
  readonly base: string;
  readonly test: TestApp;
  /** The ticket at the largest chain. */
  readonly ticketId: string;
  readonly files: { readonly photo: string; readonly log: string };
};

/** How long each took, in ms; and how often somebody was told to come again. */
type Done = { plans: number[]; signIns: number[]; uploads: { photo?: number; log?: number }; putOff: number };
export type Crowd = { readonly done: Done; readonly uploaded: Promise<unknown>; stop(): Promise<void> };

const strangers = 16;

/** Lets everybody ask at once, and each again as soon as they have their answer, until they are stopped. */
export function startCrowd(target: Target): Crowd {
  const { home } = target.test;
  const done: Done = { plans: [], signIns: [], uploads: {}, putOff: 0 };
  let isOver = false;
  const again = async (ask: (round: number) => Promise<Response>, took: number[]): Promise<void> => {
    for (let round = 0; !isOver; round += 1) {
      const begun = performance.now();
      const answer = await ask(round);
      await answer.text();
      if (answer.status === 503) done.putOff += 1;
      else if (answer.status >= 500) throw new Error(`${answer.url} answered ${answer.status}`);
      else took.push(performance.now() - begun);
    }
  };
  const members = [home.technician, home.secondTechnician, home.dispatcher, home.support];
  const asking = [
    ...members.map((member, at) => again((round) => planFor(target, member, `${at}-${round}`), done.plans)),
    ...Array.from({ length: strangers }, (_, at) =>
      again((round) => signInFrom(target, at, round), done.signIns),
    ),
  ];
  const timed = async (which: 'photo' | 'log', member: TestMember): Promise<void> => {
    const begun = performance.now();
    await upload(target, which, member);
    done.uploads[which] = performance.now() - begun;
  };
  return {
    done,
    uploaded: Promise.all([timed('photo', home.technician), timed('log', home.secondTechnician)]),
    stop: async () => {
      isOver = true;
      await Promise.all(asking);
    },
  };
}

const bearer = ({ accessToken }: TestMember) => ({ authorization: `Bearer ${accessToken}` });

/** Each leaves out another device that there isn't, so that none can be answered from what was planned before. */
function planFor({ base, ticketId }: Target, member: TestMember, what: string): Promise<Response> {
  const refused = JSON.stringify([{ place: { kind: 'device', deviceId: `none-${what}` } }]);
  return fetch(`${base}/tickets/${ticketId}/plan?refused=${encodeURIComponent(refused)}`, {
    headers: bearer(member),
  });
}

/** From an address of its own each time, so that none has to wait for having been wrong. */
const signInFrom = ({ base }: Target, stranger: number, round: number): Promise<Response> =>
  fetch(`${base}/auth/sign-in`, {
    method: 'POST',
    headers: {
      'content-type': 'application/json',
      'x-forwarded-for': `10.${stranger}.${Math.floor(round / 250)}.${round % 250}`,
    },
    body: JSON.stringify({
      organisation: 'home-firm',
      email: 'nobody@home-firm.example',
      password: 'wrong by far',
    }),
  });

/** By the upload protocol (tus 1.0). @throws where it does not become evidence */
async function upload(
  { base, ticketId, files }: Target,
  which: 'photo' | 'log',
  member: TestMember,
): Promise<void> {
  const { size } = await stat(files[which]);
  const headers = { ...bearer(member), 'tus-resumable': '1.0.0' };
  const metadata = {
    ticketId,
    about: JSON.stringify({ kind: which }),
    filename: which,
  };
  const begun = await fetch(`${base}/uploads`, {
    method: 'POST',
    headers: { ...headers, 'upload-length': String(size), 'upload-metadata': metadataHeader(metadata) },
  });
  const sent = await fetch(`${base}${begun.headers.get('location')}`, {
    method: 'PATCH',
    headers: { ...headers, 'upload-offset': '0', 'content-type': 'application/offset+octet-stream' },
    body: Readable.toWeb(createReadStream(files[which])) as ReadableStream,
    duplex: 'half',
  } as RequestInit);
  if (!sent.headers.has('evidence-id')) throw new Error(`the ${which} was not taken: ${await sent.text()}`);
}
