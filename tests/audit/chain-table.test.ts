import { describe, expect, it } from 'vitest';
import { fullAudit } from '../../shared/audit/full-audit.ts';
import type { Finding } from '../../shared/contract/chain.ts';
import { placeText } from './audit-findings.ts';
import { cableRows } from './chains/cables.ts';
import { deviceRows } from './chains/devices.ts';
import { installationRows } from './chains/installations.ts';
import { signalRows } from './chains/signal.ts';

const told = ({ rule, severity, place, text, whatToDo }: Finding): string =>
  `${rule} ${severity} ${placeText(place)}: ${text.code} > ${whatToDo.code}`;

describe('the whole audit', () => {
  it.each([...cableRows, ...deviceRows, ...signalRows, ...installationRows])(
    'of %s',
    (_what, chain, expected, purpose = {}, levels = []) => {
      expect(fullAudit(chain, purpose, {}, levels).map(told)).toEqual(expected);
    },
  );
});
