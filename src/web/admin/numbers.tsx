import { useState } from 'preact/hooks';
import { knownCategories, linkCategories, linkConstructions } from '../../../shared/contract/chain-names.ts';
import { organisationDefaults } from '../../../shared/contract/defaults.ts';
import { longest, ranges } from '../../../shared/contract/limits.ts';
import type { OrganisationSettings } from '../../../shared/contract/organisation.ts';
import { DocumentView } from '../parts/document-view.tsx';
import { faultAt } from '../parts/fault-at.ts';
import { Field, SelectField } from '../parts/field.tsx';
import { NumberField } from './number-field.tsx';
import { SaveRow } from './save-row.tsx';
import { SectionScreen } from './section-screen.tsx';
import { useSettings } from './use-settings.ts';
import { adminWords } from './words.ts';

/** Name, time zone, and the assumed numbers that the firm may set for itself. */
export function NumbersScreen() {
  const t = adminWords();
  const settings = useSettings();
  return (
    <SectionScreen title={t.numbers}>
      <DocumentView document={settings.document}>
        {({ name, settings: now, version }) => (
          <NumbersForm key={version} name={name} now={now} settings={settings} />
        )}
      </DocumentView>
    </SectionScreen>
  );
}

const isZone = (zone: string): boolean => {
  try {
    new Intl.DateTimeFormat('en', { timeZone: zone });
    return true;
  } catch {
    return false;
  }
};

function NumbersForm({
  name,
  now,
  settings: { sending, save, isSaved, touch },
}: {
  name: string;
  now: OrganisationSettings;
  settings: ReturnType<typeof useSettings>;
}) {
  const t = adminWords();
  const [firmName, setFirmName] = useState(name);
  const [draft, setDraft] = useState(now);
  const change = (part: Partial<OrganisationSettings>) => setDraft((before) => ({ ...before, ...part }));
  const budget = (part: Partial<OrganisationSettings['budget']>) =>
    change({ budget: { ...draft.budget, ...part } });
  const fault = (pointer: string) => faultAt(sending.problem, `/settings${pointer}`);
  const hasZone = isZone(draft.timeZone);
  return (
    <form
      class="stack admin-form"
      onInput={touch}
      onSubmit={async (event) => {
        event.preventDefault();
        if (hasZone) await save(draft, firmName);
      }}
    >
      <fieldset class="admin-fields">
        <legend>{t.general}</legend>
        <Field
          label={t.firmName}
          required
          maxLength={longest.line}
          value={firmName}
          onInput={({ currentTarget }) => setFirmName(currentTarget.value)}
        />
        <Field
          label={t.zone}
          hint={t.zoneHint}
          required
          error={hasZone ? fault('/timeZone') : t.zoneUnknown}
          value={draft.timeZone}
          onInput={({ currentTarget }) => change({ timeZone: currentTarget.value })}
        />
        <NumberField
          label={t.risk}
          hint={t.riskHint(organisationDefaults.risk)}
          {...ranges.risk}
          error={fault('/risk')}
          value={draft.risk}
          onChange={(risk) => change({ risk })}
        />
        <NumberField
          label={t.reopen}
          hint={t.assumed(organisationDefaults.reopenDays)}
          {...ranges.reopenDays}
          step={1}
          error={fault('/reopenDays')}
          value={draft.reopenDays}
          onChange={(reopenDays) => change({ reopenDays })}
        />
      </fieldset>
      <fieldset class="admin-fields">
        <legend>{t.cables}</legend>
        <NumberField
          label={t.shortest}
          hint={t.practice(organisationDefaults.shortestCableM)}
          {...ranges.shortestCableM}
          error={fault('/shortestCableM')}
          value={draft.shortestCableM}
          onChange={(shortestCableM) => change({ shortestCableM })}
        />
        <NumberField
          label={t.longest}
          hint={t.practice(organisationDefaults.longestCopperM)}
          {...ranges.longestCopperM}
          error={fault('/longestCopperM')}
          value={draft.longestCopperM}
          onChange={(longestCopperM) => change({ longestCopperM })}
        />
      </fieldset>
      <fieldset class="admin-fields">
        <legend>{t.budget}</legend>
        {linkCategories.map((category) => (
          <NumberField
            key={category}
            label={t.reachOf(t.categories[category])}
            {...ranges.reachM}
            error={fault(`/budget/passiveCopperReachM/${category}`)}
            value={draft.budget.passiveCopperReachM[category]}
            onChange={(reach) =>
              budget({ passiveCopperReachM: { ...draft.budget.passiveCopperReachM, [category]: reach } })
            }
          />
        ))}
        <NumberField
          label={t.activeReach}
          {...ranges.activeCopperReach}
          error={fault('/budget/activeCopperReach')}
          value={draft.budget.activeCopperReach}
          onChange={(activeCopperReach) => budget({ activeCopperReach })}
        />
        <NumberField
          label={t.opticalReach}
          {...ranges.reachM}
          error={fault('/budget/activeOpticalReachM')}
          value={draft.budget.activeOpticalReachM}
          onChange={(activeOpticalReachM) => budget({ activeOpticalReachM })}
        />
        <NumberField
          label={t.uncertified}
          {...ranges.share}
          error={fault('/budget/uncertified')}
          value={draft.budget.uncertified}
          onChange={(uncertified) => budget({ uncertified })}
        />
        <NumberField
          label={t.siteEnds}
          {...ranges.share}
          error={fault('/budget/siteFittedEnds')}
          value={draft.budget.siteFittedEnds}
          onChange={(siteFittedEnds) => budget({ siteFittedEnds })}
        />
        <SelectField
          label={t.unknownCategory}
          options={knownCategories.map((value) => ({
            value,
            label: t.categories[value],
          }))}
          value={draft.budget.unknownCategory}
          onChoose={(unknownCategory) => budget({ unknownCategory })}
        />
        <NumberField
          label={t.extender}
          {...ranges.tmdsMHz}
          error={fault('/budget/extenderTmdsMHz')}
          value={draft.budget.extenderTmdsMHz}
          onChange={(extenderTmdsMHz) => budget({ extenderTmdsMHz })}
        />
      </fieldset>
      <fieldset class="admin-fields">
        <legend>{t.draw}</legend>
        {linkConstructions.map((construction) => (
          <NumberField
            key={construction}
            label={t.constructions[construction]}
            {...ranges.drawMa}
            error={fault(`/cableDrawMa/${construction}`)}
            value={draft.cableDrawMa[construction]}
            onChange={(drawMa) => change({ cableDrawMa: { ...draft.cableDrawMa, [construction]: drawMa } })}
          />
        ))}
      </fieldset>
      <SaveRow settings={{ sending, isSaved }} />
    </form>
  );
}
