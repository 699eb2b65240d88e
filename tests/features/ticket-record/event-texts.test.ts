import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { ticketCommandTypes } from '../../../shared/contract/commands.ts';
import { erasedText, erasureOf, withErasuresTold } from '../../../shared/contract/erased-text.ts';
import { personText, personTextsIn } from '../../../shared/contract/person-text.ts';
import { retestCodes } from '../../../shared/message/codes/retest.ts';
import { eventForms, textsInEvent } from '../../../src/features/ticket-record/event-forms.ts';
import { digestOf, resealed, seal, unseal } from '../../../src/features/ticket-record/sealed-text.ts';

/** Strings and unknown values of a form that may hold any words and are not marked as a person's text, by their path. */
function unmarkedIn(form: z.core.$ZodType, path: string): string[] {
  const { def } = form as unknown as { def: { type: string } & Record<string, unknown> };
  const inside = (part: unknown, step = ''): string[] => unmarkedIn(part as z.core.$ZodType, path + step);
  switch (def.type) {
    case 'object':
      return Object.entries(def.shape as object).flatMap(([key, part]) => inside(part, `.${key}`));
    case 'array':
      return inside(def.element, '[]');
    case 'record':
      return [...inside(def.keyType, '{key}'), ...inside(def.valueType, '{}')];
    case 'union':
      return (def.options as unknown[]).flatMap((option) => inside(option));
    case 'pipe':
      return inside(def.in);
    case 'unknown':
    case 'any':
    case 'lazy':
    case 'intersection':
      return [path];
    case 'string': {
      const isFree = z.safeParse(form, 'Any words, whatever they say!').success;
      const isMarked = personTextsIn(form as z.ZodType, 'Any words').length > 0;
      return isFree && !isMarked ? [path] : [];
    }
    default:
      return def.innerType === undefined ? [] : inside(def.innerType);
  }
}

/** What holds words and is no text of a person in words of their own. What is new here needs one of these reasons. */
const noTexts = {
  'names of things of the chain, and settings in the words of a device’s own menu': [
    'declareChange.settings[].key',
    'declareChange.settings[].to',
    'endUnattended.firmware[].level',
    'evidenceAdded.evidence.reading.level',
    'evidenceAdded.evidence.reading.values{key}',
    'evidenceAdded.evidence.reading.values{}',
    ...['judgeRetest', 'judgementRevised'].flatMap((type) =>
      ['after', 'before', 'key'].map((part) => `${type}.outcome.judgement.differences[].${part}`),
    ),
    'leaveInPlace.firmware[].level',
    ...['firmware', 'model', 'serial'].map((part) => `finishRemedy.installed[].${part}`),
    ...['finishRemedy', 'recordAsFound'].flatMap((type) =>
      [
        'devices[].firmware',
        'devices[].model',
        'devices[].name',
        'devices[].ports[].label',
        'devices[].serial',
        'devices[].settings{key}',
        'devices[].settings{}',
        'name',
      ].map((part) => `${type}.chain.${part}`),
    ),
    'recordLook.what.key',
    'recordLook.what.shouldBe',
    'recordLook.what.value',
  ],
  'codes and messages of the program': [
    ...['judgeRetest', 'judgementRevised'].flatMap((type) =>
      ['reasons', 'warnings'].flatMap((said) =>
        ['code', 'text', 'values{key}', 'values{}'].map(
          (part) => `${type}.outcome.judgement.${said}[].${part}`,
        ),
      ),
    ),
    'reviewAudit.outcome.findings[].code',
    'reviewAudit.shown.findings[].code',
  ],
  'of an organisation’s own kind of change, as its admins have named it': [
    'declareChange.outcome.own.caution',
    'declareChange.outcome.own.kit',
    'declareChange.outcome.own.name',
    'enterLateChange.outcome.own.caution',
    'enterLateChange.outcome.own.kit',
    'enterLateChange.outcome.own.name',
  ],
  // See withoutContact.
  'not in the log at all': [
    'open.intake.reporter.name',
    'open.intake.reporter.phone',
    'update.intake.reporter.name',
    'update.intake.reporter.phone',
  ],
};

describe('texts of persons in events', () => {
  it('are described for every command', () => {
    expect(ticketCommandTypes.filter((type) => !eventForms.has(type))).toEqual([]);
  });

  it('are all places in which words can stand, but for those that are named here', () => {
    const unmarked = [...eventForms].flatMap(([type, forms]) =>
      forms.flatMap((form) => unmarkedIn(form, type)),
    );
    expect([...new Set(unmarked)].toSorted()).toEqual(Object.values(noTexts).flat().toSorted());
  });

  it('are in no message that a verdict holds', () => {
    const kinds: string[] = Object.values(retestCodes).flatMap((values) => Object.values(values));
    expect(kinds.filter((kind) => kind.startsWith('text') || kind.startsWith('message'))).toEqual([]);
  });

  it('are found under every wrapping of a form', () => {
    const word = personText(z.string().trim());
    const form = z.object({
      plain: word,
      bounded: word.min(1).max(9).default(''),
      listed: z.array(z.object({ word: word.nullable() })),
      either: z.union([z.number(), z.object({ word })]),
      by: z.discriminatedUnion('kind', [
        z.object({ kind: z.literal('a'), word }),
        z.object({ kind: z.literal('b'), word: z.string() }),
      ]),
      'odd~key/': z.record(z.string(), word.optional()),
      unmarked: z.string(),
    });
    const document = {
      plain: '1',
      bounded: '2',
      listed: [{ word: null }, { word: '3' }, { word: '' }],
      either: { word: '4' },
      by: { kind: 'b', word: 'not one' },
      'odd~key/': { 'a/b': '5' },
      unmarked: 'not one',
    };
    expect(personTextsIn(form, document)).toEqual([
      { pointer: '/plain', text: '1' },
      { pointer: '/bounded', text: '2' },
      { pointer: '/listed/1/word', text: '3' },
      { pointer: '/either/word', text: '4' },
      { pointer: '/odd~0key~1/a~1b', text: '5' },
    ]);
    expect(personTextsIn(form, { ...document, by: { kind: 'a', word: '6' } })).toContainEqual({
      pointer: '/by/word',
      text: '6',
    });
  });

  it('are put back as they were, and give what was hashed again', () => {
    const texts = fc.array(fc.string({ unit: 'binary', minLength: 1 }), { maxLength: 4 });
    fc.assert(
      fc.property(fc.string({ unit: 'binary', minLength: 1 }), texts, (text, answers) => {
        const payload = {
          text,
          requests: answers.map((answer) => ({ text: answer, item: null })),
          other: text,
          settings: { text, sha256: text },
        };
        const found = [
          { pointer: '/text', text },
          ...answers.map((answer, at) => ({ pointer: `/requests/${at}/text`, text: answer })),
        ];
        const { payload: sealed, kept } = seal(payload, found);
        expect(JSON.stringify({ ...sealed, other: '', settings: {} })).not.toContain(JSON.stringify(text));
        const back = unseal(sealed, kept);
        expect(back.payload).toEqual(payload);
        expect(resealed(back.payload, back.texts)).toEqual(sealed);
        for (const { salt, text: one, sha256 } of back.texts) expect(digestOf(salt ?? '', one)).toBe(sha256);
      }),
    );
  });

  it('of an event that has no form are a fault of ours', () => {
    expect(() => textsInEvent('eventOfTomorrow', {})).toThrow(/eventOfTomorrow/);
  });
});

describe('an erased text', () => {
  const erasure = { at: '2026-11-29T10:00:00.125Z', by: '6c1bfd4e-54a9-4bd5-8c53-90ff3b0a2f11' };

  it('says when and by whom, also inside a sentence, and nothing else does', () => {
    expect(erasureOf(erasedText(erasure))).toEqual(erasure);
    const told = withErasuresTold(`Note: ${erasedText(erasure)}.`, ({ at, by }) => `<${at} ${by}>`);
    expect(told).toBe(`Note: <${erasure.at} ${erasure.by}>.`);
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        expect(erasureOf(text)).toBeNull();
        expect(withErasuresTold(text, () => 'told')).toBe(text);
      }),
    );
  });

  it('is short enough for every field that a text may stand in', () => {
    const shortest = [...eventForms].flatMap(([, forms]) => forms.flatMap((form) => bounds(form)));
    expect(Math.min(...shortest)).toBeGreaterThanOrEqual(erasedText(erasure).length);
  });
});

/** The longest text that each marked field of a form takes. */
function bounds(form: z.core.$ZodType): number[] {
  const { def } = form as unknown as { def: { type: string } & Record<string, unknown> };
  const inside = (part: unknown): number[] => bounds(part as z.core.$ZodType);
  if (def.type === 'string') {
    const isMarked = personTextsIn(form as z.ZodType, 'Any words').length > 0;
    return isMarked ? [(form as z.ZodString).maxLength ?? Number.POSITIVE_INFINITY] : [];
  }
  return [
    ...Object.values((def.shape as object | undefined) ?? {}),
    ...((def.options as unknown[] | undefined) ?? []),
    ...[def.element, def.valueType, def.in, def.innerType].filter((part) => part !== undefined),
  ].flatMap(inside);
}
