import { describe, expect, it } from 'vitest';
import { auditRules } from '../../shared/audit/chain-audit.ts';
import { changeKinds, symptomKinds } from '../../shared/contract/triage.ts';
import { failureModes } from '../../shared/isolation/failure-modes.ts';
import { faultTable } from '../../shared/isolation/fault-table.ts';
import { modesOfRule } from '../../shared/isolation/finding-modes.ts';
import { listFigures, tableOf, withOverrides } from '../../shared/isolation/overrides.ts';

const figures = listFigures(faultTable);

describe('the table of figures', () => {
  it('holds numbers only, each with its origin', () => {
    expect(figures.length).toBeGreaterThan(300);
    for (const { path, figure, origin } of figures) {
      expect(figure, path).toBeGreaterThanOrEqual(0);
      expect(Number.isFinite(figure), path).toBe(true);
      expect(['common practice', 'assumed']).toContain(origin);
    }
    expect(new Set(figures.map(({ path }) => path)).size).toBe(figures.length);
  });

  it.each(['symptomChances', 'contentChances', 'patternChances', 'triggerChances'])(
    'adds up each row of %s to 1',
    (section) => {
      for (const mode of failureModes) {
        const row = figures.filter(({ path }) => path.startsWith(`${section}/${mode}/`));
        expect(row.length, mode).toBeGreaterThan(2);
        expect(
          row.reduce((sum, { figure }) => sum + figure, 0),
          mode,
        ).toBeCloseTo(1, 12);
      }
      if (section === 'symptomChances')
        expect(figures.filter(({ path }) => path.startsWith(`${section}/edid/`))).toHaveLength(
          symptomKinds.length,
        );
    },
  );

  it('holds nothing certain about what a change does', () => {
    for (const { path, figure } of figures)
      if (/^(effects|coincidence|menuStays)\//.test(path)) {
        expect(figure, path).toBeGreaterThan(0);
        expect(figure, path).toBeLessThan(1);
      }
  });

  it('holds the minutes of every change, and when looking further is no longer worth it', () => {
    const pathsUnder = (section: string) =>
      figures.map(({ path }) => path).filter((path) => path.startsWith(`${section}/`));
    expect(pathsUnder('changeMinutes')).toEqual(
      expect.arrayContaining(
        changeKinds.flatMap((kind) => [`changeMinutes/${kind}/setup`, `changeMinutes/${kind}/restore`]),
      ),
    );
    expect(pathsUnder('planning')).toEqual(
      expect.arrayContaining([
        'planning/naming/stopAt',
        'planning/naming/priorDoubt',
        'planning/escalation/minutes',
      ]),
    );
  });

  it('knows which modes every rule of the prerequisite audit speaks of', () => {
    for (const { id } of auditRules) expect(modesOfRule(id), id).not.toBeNull();
    expect(modesOfRule('a-rule-of-tomorrow')).toBeNull();
  });
});

describe('an organisation’s own figures', () => {
  it('replace the built-in ones, marked, and leave the table they came from alone', () => {
    const path = 'linkWeights/contact/passiveCopper';
    const result = withOverrides(faultTable, { [path]: 9, 'effects/replaceCable/target/contact': 0.5 });
    if (!result.ok) throw new Error('refused');
    const changed = listFigures(result.table);
    expect(changed.find((each) => each.path === path)).toEqual({ path, figure: 9, origin: 'organisation' });
    expect(result.table.effects.replaceCable.target?.figures.contact).toBe(0.5);
    expect(result.table.effects.reseat).toBe(faultTable.effects.reseat);
    expect(figures.find((each) => each.path === path)?.figure).toBe(2.5);
    expect(changed).toHaveLength(figures.length);
  });

  it('are refused one by one where they make no sense', () => {
    expect(
      withOverrides(faultTable, {
        'linkWeights/contact/string': 1,
        'effects/reseat/target/contact': 1,
        'weighing/outsideShare/share': 0,
        'linkWeights/contact/passiveCopper': -1,
        'deviceWeights/edid/switch': 2,
        'changeMinutes/reseat/setup': -1,
        'planning/escalation/minutes': 20_000,
        'planning/naming/stopAt': 1,
        'planning/naming/priorDoubt': 0.5,
      }),
    ).toMatchObject({
      ok: false,
      faults: [
        { path: 'linkWeights/contact/string', fault: { code: 'noSuchFigure' } },
        { path: 'effects/reseat/target/contact', fault: { code: 'chanceOutOfBounds' } },
        { path: 'weighing/outsideShare/share', fault: { code: 'chanceOutOfBounds' } },
        { path: 'linkWeights/contact/passiveCopper', fault: { code: 'weightOutOfBounds' } },
        { path: 'changeMinutes/reseat/setup', fault: { code: 'minutesOutOfBounds' } },
        {
          path: 'planning/escalation/minutes',
          fault: { code: 'minutesOutOfBounds', values: { most: 10_000 } },
        },
        { path: 'planning/naming/stopAt', fault: { code: 'chanceOutOfBounds' } },
        { path: 'planning/naming/priorDoubt', fault: { code: 'doubtOutOfBounds' } },
      ],
    });
    expect(withOverrides(faultTable, {})).toEqual({ ok: true, table: faultTable });
  });

  it('hold each by itself: one that no longer fits takes none of the others with it', () => {
    const held = tableOf({ 'deviceWeights/edid/switch': 2, 'deviceWeights/ofBefore/switch': 2 });
    expect(held.deviceWeights.edid.figures.switch).toBe(2);
    expect(listFigures(held)).toHaveLength(figures.length);
  });
});
