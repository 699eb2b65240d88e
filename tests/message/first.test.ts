import { describe, expect, it } from 'vitest';
import { firstEn } from '../../shared/message/en/first.ts';
import { english } from '../../shared/message/en/index.ts';
import { laterEn } from '../../shared/message/en/later.ts';
import { englishOf } from '../../shared/message/en/say.ts';
import { message, messageText } from '../../shared/message/index.ts';

describe('the English of a first load', () => {
  it('is a part of English, and the rest is the other', () => {
    const [first, later] = [Object.keys(firstEn), Object.keys(laterEn)];
    expect(first.filter((code) => later.includes(code))).toEqual([]);
    expect([...first, ...later].toSorted()).toEqual(Object.keys(english.sentences).toSorted());
  });

  it('says of what it lacks that it is not there, also inside another sentence, and never its code', () => {
    let asked = 0;
    const part = englishOf({
      ...firstEn,
      auditSays: laterEn.auditSays,
      unknownMessage: () => {
        asked += 1;
        return '…';
      },
    });
    const lacking = message('noSuchSite');
    expect(messageText(message('kitCoupler'), part, 'UTC')).toBe(
      messageText(message('kitCoupler'), english, 'UTC'),
    );
    expect(asked).toBe(0);
    expect(messageText(lacking, part, 'UTC')).toBe('…');
    const around = messageText(message('auditSays', { finding: lacking }), part, 'UTC');
    expect(around).toContain('…');
    expect(around).not.toContain(lacking.code);
    expect(asked).toBe(2);
  });
});
