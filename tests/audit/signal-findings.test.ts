import { describe, expect, it } from 'vitest';
import { fullAudit } from '../../shared/audit/full-audit.ts';
import type { Chain } from '../../shared/contract/chain.ts';
import {
  chainOf,
  display,
  opticalCable,
  rowOf,
  source,
  tmds9,
  withLink,
  withPort,
} from '../chain/build-chain.ts';
import { cinema, edid1080, format, uhd60, withEdid } from '../signal/link-budget/chains.ts';

const signal = ['link-budget', 'certification', 'port-mode', 'five-volt'];
const found = (chain: Chain, wantedFormats = [uhd60]) =>
  fullAudit({ ...chain, wantedFormats }, {}, {}, []).filter(({ rule }) => signal.includes(rule));

describe('what the budgets say against a chain', () => {
  it('is nothing where every link carries what is wanted', () => {
    expect(found(cinema())).toEqual([]);
  });

  it('is the narrowest of each link, what to do about it, and the care that the work wants', () => {
    const chain = withLink(cinema(), 'L4', { category: 'highSpeed', route: 'inWall' });
    const [finding, ...others] = found(chain);
    expect(others).toEqual([]);
    expect(finding).toMatchObject({ severity: 'mustFix', place: { kind: 'link', linkId: 'L4' } });
    expect(finding?.text.values.needed).toBe(17.82);
    expect(finding?.whatToDo.code).toBe('replaceByCertifiedOptical');
    const cautions = finding?.cautions.map(({ code }) => code);
    for (const code of ['cautionDisplay', 'cautionCableInWall', 'cautionMains'])
      expect(cautions).toContain(code);
  });

  it('sends nobody to a cable for a port that is set too low, or for an EDID', () => {
    const pair = rowOf([source('s'), display('d')]);
    const [port] = found(withPort(pair, 'd', 'in1', { setMode: tmds9 }));
    expect(port).toMatchObject({ severity: 'mustFix', cautions: [] });
    expect(port?.whatToDo.code).toBe('setPortMode');
    const [edid] = found(withEdid(pair, 'd', 'in1', edid1080));
    expect(edid).toMatchObject({ severity: 'shouldFix', cautions: [] });
    expect(edid?.whatToDo.code).toBe('setInputOrAskForListed');
  });

  it('says so of a format that there is no way to send', () => {
    const [finding] = found(rowOf([source('s'), display('d')]), [format(2160, 60, 'ycbcr422', 16)]);
    expect(finding?.whatToDo.code).toBe('askForExistingFormat');
  });

  it('is a 5 V line that falls short by the record, with the care for supplies', () => {
    const chain = chainOf(
      [source('s'), display('d')],
      [
        opticalCable('s.out1', 'd.in1', {
          drawMa: 120,
          sinkEnd: { needsPower: false, powered: 'no', seated: 'yes' },
        }),
      ],
    );
    const recorded = withPort(withPort(chain, 's', 'out1', { fiveVoltMa: 55 }), 'd', 'in1', {
      fiveVoltMa: 20,
    });
    const [finding] = found(recorded);
    expect(finding).toMatchObject({
      severity: 'mustFix',
      text: { code: 'linkUnderfed', values: { budget: { code: 'fiveVoltOpticalOnSource' } } },
    });
    expect(finding?.cautions.map(({ code }) => code)).toContain('cautionMains');
  });
});
