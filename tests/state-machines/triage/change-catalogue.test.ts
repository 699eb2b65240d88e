import { describe, expect, it } from 'vitest';
import { samePlace } from '../../../shared/chain/place.ts';
import { type ChangeKind, changeKinds } from '../../../shared/contract/triage.ts';
import { changeCatalogue } from '../../../shared/isolation/change-catalogue.ts';
import { tableOf } from '../../../shared/isolation/index.ts';
import { applicableChanges } from '../../../state-machines/index.ts';
import { homeCinema, withLink } from '../../chain/build-chain.ts';
import { TriageCase } from './triage-case.ts';
import { link } from './triage-events.ts';

const onSide = (menu: 'stayed' | 'vanished', chain = homeCinema()) =>
  new TriageCase({ chain }).substituting('processor', menu);
const upstream = () => onSide('stayed');
const downstream = (chain = homeCinema()) => onSide('vanished', chain);

describe('what to know before making a change', () => {
  const find = (ticket: TriageCase, kind: ChangeKind) =>
    applicableChanges(ticket.snapshot).find((change) => change.kind === kind);

  it('names the place, the minutes, and what to have at hand', () => {
    const change = find(downstream(), 'replaceCable');
    expect(change).toMatchObject({
      text: { code: 'changeAt', values: { change: 'replaceCable', place: { kind: 'link', linkId: 'L4' } } },
      diagnostic: false,
      tried: false,
    });
    expect(change?.needs).toContainEqual({ code: 'needCableAsLong', values: { lengthM: 15 } });
    expect(change?.setupMin).toBeGreaterThan(0);
  });

  it('takes the minutes from the organisation’s own figures', () => {
    const chain = withLink(homeCinema(), 'L4', { route: 'inConduit' });
    const table = tableOf({
      'changeMinutes/reseat/setup': 7,
      'changeMinutes/pullThroughConduit/restore': 90,
    });
    const minutes = Object.fromEntries(
      applicableChanges(downstream(chain).snapshot, { table })
        .filter(({ target }) => samePlace(target, link('L4')))
        .map(({ kind, setupMin, restoreMin }) => [kind, { setupMin, restoreMin }]),
    );
    expect(minutes).toMatchObject({
      reseat: { setupMin: 7, restoreMin: 0 },
      replaceCable: { setupMin: 60, restoreMin: 90 },
    });
  });

  it('warns of ladders, laser light, mains, cables across floors and in walls', () => {
    const inWall = withLink(homeCinema(), 'L4', { route: 'inWall' });
    const cautions = (ticket: TriageCase, kind: ChangeKind) =>
      find(ticket, kind)?.caution.map(({ code }) => code);
    expect(cautions(downstream(inWall), 'temporaryCable')?.sort()).toEqual([
      'cautionCableAcrossFloor',
      'cautionCableInWall',
      'cautionDisplay',
      'cautionMains',
      'cautionOpticalLight',
    ]);
    const conduit = withLink(homeCinema(), 'L4', { route: 'inConduit' });
    expect(cautions(downstream(conduit), 'replaceCable')).toContain('cautionConduit');
    expect(cautions(upstream(), 'reseat')).not.toContain('cautionDisplay');
  });

  it('asks for a display that does the same content protection', () => {
    expect(find(downstream(), 'substituteDisplay')?.needs).toContainEqual({
      code: 'needContentProtection',
      values: { version: '2.2' },
    });
  });

  it('takes hot plug for information, never a repair, and a limit for a test alone', () => {
    expect(changeCatalogue.limitInputBandwidth).toMatchObject({ diagnostic: true });
    expect(changeCatalogue.reissueHotPlug).toMatchObject({ diagnostic: true, showsCulprit: false });
  });

  it('tells which changes were tried', () => {
    const ticket = upstream().tried('reseat', link('L3'), 'persists').send({ type: 'restoreChange' });
    const tried = applicableChanges(ticket.snapshot).filter((change) => change.tried);
    expect(tried.map(({ kind, target }) => ({ kind, target }))).toEqual([
      { kind: 'reseat', target: link('L3') },
    ]);
  });

  it('is written for every kind', () => {
    expect(Object.keys(changeCatalogue).sort()).toEqual([...changeKinds].sort());
  });
});
