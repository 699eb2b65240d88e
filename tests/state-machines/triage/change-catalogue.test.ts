import { describe, expect, it } from 'vitest';
import { type ChangeKind, changeKinds } from '../../../shared/contract/triage.ts';
import { tableOf } from '../../../shared/isolation/index.ts';
import { applicableChanges, changeCatalogue } from '../../../state-machines/index.ts';
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
      targetName: "the cable from Cinema processor 'HDMI OUT1' to Projector 'HDMI IN1'",
      diagnostic: false,
      tried: false,
    });
    expect(change?.needs).toContain('about 15 m, as long as the one that is there');
    expect(change?.setupMin).toBeGreaterThan(0);
  });

  it('takes the minutes from the organisation’s own figures', () => {
    const chain = withLink(homeCinema(), 'L4', { route: 'inConduit' });
    const table = tableOf({
      'changeMinutes/reseat/setup': 7,
      'changeMinutes/pullThroughConduit/restore': 90,
    });
    const minutes = Object.fromEntries(
      applicableChanges(downstream(chain).snapshot, table)
        .filter(({ targetName }) => targetName.includes('Projector'))
        .map(({ kind, setupMin, restoreMin }) => [kind, { setupMin, restoreMin }]),
    );
    expect(minutes).toMatchObject({
      reseat: { setupMin: 7, restoreMin: 0 },
      replaceCable: { setupMin: 60, restoreMin: 90 },
    });
  });

  it('warns of ladders, laser light, mains, cables across floors and in walls', () => {
    const inWall = withLink(homeCinema(), 'L4', { route: 'inWall' });
    const temporary = find(downstream(inWall), 'temporaryCable')?.caution.join(' ') ?? '';
    expect(temporary).toMatch(/trips people/);
    expect(temporary).toMatch(/laser light/);
    expect(temporary).toMatch(/ladder/);
    expect(temporary).toMatch(/fire rating that local codes ask for/);
    expect(temporary).toMatch(/licensed/);
    const conduit = withLink(homeCinema(), 'L4', { route: 'inConduit' });
    expect(find(downstream(conduit), 'replaceCable')?.caution.join(' ')).toMatch(/conduit/);
    expect(find(upstream(), 'reseat')?.caution.join(' ')).not.toMatch(/ladder/);
  });

  it('asks for a display that does the same content protection', () => {
    expect(find(downstream(), 'substituteDisplay')?.needs).toContain(
      'content protection 2.2 on the other display',
    );
  });

  it('says how a limit ends, and that hot plug is information, never a repair', () => {
    expect(changeCatalogue.limitInputBandwidth).toMatchObject({ diagnostic: true });
    expect(changeCatalogue.limitInputBandwidth.instructions).toMatch(/9 Gbit\/s.*restart/);
    expect(changeCatalogue.limitInputBandwidth.afterwards).toMatch(/back to automatic/);
    expect(changeCatalogue.reissueHotPlug.instructions).toMatch(/information, never a repair/);
    expect(changeCatalogue.reissueHotPlug.showsCulprit).toBe(false);
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
    for (const kind of changeKinds) {
      const { label, instructions, afterwards } = changeCatalogue[kind];
      for (const text of [label, instructions, afterwards]) expect(text.length).toBeGreaterThan(5);
    }
  });
});
