import { knownCategories, linkConstructions } from '../../../shared/contract/chain-names.ts';
import { organisationDefaults } from '../../../shared/contract/defaults.ts';
import { longest, ranges } from '../../../shared/contract/limits.ts';
import type { OrganisationSettings } from '../../../shared/contract/organisation.ts';
import { DocumentView } from '../parts/document-view.tsx';
import { faultAt } from '../parts/fault-at.ts';
import { Field, SelectField } from '../parts/field.tsx';
import { Tick } from '../parts/tick.tsx';
import { terms } from '../words/terms.ts';
import { NumberField } from './number-field.tsx';
import { SaveRow } from './save-row.tsx';
import { SectionScreen } from './section-screen.tsx';
import { useSectionDraft, useSettings } from './use-settings.ts';
import { adminWords } from './words.ts';

/** Name, time zone, and the assumed numbers that the firm may set for itself. */
export function NumbersScreen() {
  const t = adminWords();
  const settings = useSettings();
  return (
    <SectionScreen title={t.numbers}>
      <DocumentView document={settings.document}>
        {({ name, settings: now, version }) => (
          <NumbersForm fields={{ ...now, name }} version={version} settings={settings} />
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

/** What the fields of the form share: the figures as they are typed, and what the API said of each. */
type Fields = {
  draft: OrganisationSettings;
  change: (part: Partial<OrganisationSettings>) => void;
  /** @param pointer into the settings */
  fault: (pointer: string) => string | undefined;
};

function NumbersForm({
  fields: saved,
  version,
  settings: { sending, save, isSaved, touch },
}: {
  fields: OrganisationSettings & { name: string };
  version: number;
  settings: ReturnType<typeof useSettings>;
}) {
  const t = adminWords();
  const section = useSectionDraft('numbers', { fields: saved, version });
  if (section === null) return null;
  const { fields: draft, change } = section;
  const fault = (pointer: string) => faultAt(sending.problem, `/settings${pointer}`);
  const fields: Fields = { draft, change, fault };
  return (
    <form
      class="stack admin-form"
      onInput={touch}
      onSubmit={async (event) => {
        event.preventDefault();
        const { name, ...typed } = section.typed;
        if (isZone(draft.timeZone) && (await save(typed, name))) await section.forget();
      }}
    >
      <fieldset class="admin-fields">
        <legend>{t.general}</legend>
        <Field
          label={t.firmName}
          required
          maxLength={longest.line}
          value={draft.name}
          onInput={({ currentTarget }) => change({ name: currentTarget.value })}
        />
        <GeneralFields {...fields} />
      </fieldset>
      <fieldset class="admin-fields">
        <legend>{t.cables}</legend>
        <CableFields {...fields} />
      </fieldset>
      <fieldset class="admin-fields">
        <legend>{t.budget}</legend>
        <BudgetFields {...fields} />
      </fieldset>
      <fieldset class="admin-fields">
        <legend>{t.draw}</legend>
        <DrawFields {...fields} />
      </fieldset>
      <SaveRow settings={{ sending, isSaved }} draft={section} />
    </form>
  );
}

function GeneralFields({ draft, change, fault }: Fields) {
  const t = adminWords();
  const hasZone = isZone(draft.timeZone);
  return (
    <>
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
      <NumberField
        label={t.auditLogDays}
        hint={t.assumed(organisationDefaults.auditLogDays)}
        {...ranges.auditLogDays}
        step={1}
        error={fault('/auditLogDays')}
        value={draft.auditLogDays}
        onChange={(auditLogDays) => change({ auditLogDays })}
      />
      <Tick
        label={t.adminsSecond}
        isOn={draft.adminsNeedSecondFactor}
        onChange={(adminsNeedSecondFactor) => change({ adminsNeedSecondFactor })}
      />
    </>
  );
}

function CableFields({ draft, change, fault }: Fields) {
  const t = adminWords();
  return (
    <NumberField
      label={t.shortest}
      hint={t.practice(organisationDefaults.shortestCableM)}
      {...ranges.shortestCableM}
      error={fault('/shortestCableM')}
      value={draft.shortestCableM}
      onChange={(shortestCableM) => change({ shortestCableM })}
    />
  );
}

/** What the link budget takes for granted. */
function BudgetFields({ draft, change, fault }: Fields) {
  const t = adminWords();
  const { budget } = draft;
  const set = (part: Partial<typeof budget>) => change({ budget: { ...budget, ...part } });
  return (
    <>
      {knownCategories.map((category) => (
        <NumberField
          key={category}
          label={t.reachOf(terms().category[category])}
          {...ranges.reachM}
          error={fault(`/budget/passiveCopperReachM/${category}`)}
          value={budget.passiveCopperReachM[category]}
          onChange={(reach) =>
            set({ passiveCopperReachM: { ...budget.passiveCopperReachM, [category]: reach } })
          }
        />
      ))}
      <NumberField
        label={t.activeReach}
        {...ranges.activeCopperReach}
        error={fault('/budget/activeCopperReach')}
        value={budget.activeCopperReach}
        onChange={(activeCopperReach) => set({ activeCopperReach })}
      />
      <NumberField
        label={t.opticalReach}
        {...ranges.reachM}
        error={fault('/budget/activeOpticalReachM')}
        value={budget.activeOpticalReachM}
        onChange={(activeOpticalReachM) => set({ activeOpticalReachM })}
      />
      <NumberField
        label={t.farthestReach}
        {...ranges.farthestReach}
        error={fault('/budget/farthestReach')}
        value={budget.farthestReach}
        onChange={(farthestReach) => set({ farthestReach })}
      />
      <NumberField
        label={t.uncertified}
        {...ranges.share}
        error={fault('/budget/uncertified')}
        value={budget.uncertified}
        onChange={(uncertified) => set({ uncertified })}
      />
      <NumberField
        label={t.siteEnds}
        {...ranges.share}
        error={fault('/budget/siteFittedEnds')}
        value={budget.siteFittedEnds}
        onChange={(siteFittedEnds) => set({ siteFittedEnds })}
      />
      <NumberField
        label={t.perCoupler}
        {...ranges.share}
        error={fault('/budget/perCoupler')}
        value={budget.perCoupler}
        onChange={(perCoupler) => set({ perCoupler })}
      />
      <SelectField
        label={t.unknownCategory}
        options={knownCategories.map((value) => ({
          value,
          label: terms().category[value],
        }))}
        value={budget.unknownCategory}
        onChoose={(unknownCategory) => set({ unknownCategory })}
      />
      <NumberField
        label={t.extender}
        {...ranges.tmdsMHz}
        error={fault('/budget/extenderTmdsMHz')}
        value={budget.extenderTmdsMHz}
        onChange={(extenderTmdsMHz) => set({ extenderTmdsMHz })}
      />
      <NumberField
        label={t.twistedPairReach}
        {...ranges.reachM}
        error={fault('/budget/twistedPairReachM')}
        value={budget.twistedPairReachM}
        onChange={(twistedPairReachM) => set({ twistedPairReachM })}
      />
    </>
  );
}

/** What cables draw from the 5 V line. */
function DrawFields({ draft, change, fault }: Fields) {
  const _t = adminWords();
  return (
    <>
      {linkConstructions.map((construction) => (
        <NumberField
          key={construction}
          label={terms().construction[construction]}
          {...ranges.drawMa}
          error={fault(`/cableDrawMa/${construction}`)}
          value={draft.cableDrawMa[construction]}
          onChange={(drawMa) => change({ cableDrawMa: { ...draft.cableDrawMa, [construction]: drawMa } })}
        />
      ))}
    </>
  );
}
