import { useEffect, useId, useRef, useState } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import type { SiteSummary } from '../../../../shared/contract/site.ts';
import { useSiteSearch } from './use-site-search.ts';
import { callWords } from './words.ts';

/**
 * Finds a site while somebody says who they are (an editable combobox with a list, WAI-ARIA 1.2): arrows go through
 * the list, Enter takes one, Escape takes the list away. The last entry adds a site that is not known yet.
 */
export function SiteFinder({
  call,
  typed,
  onType,
  onChoose,
}: {
  /** The call's name, which comes back from a site that is added for it. */
  call: string;
  typed: string;
  onType: (typed: string) => void;
  onChoose: (site: SiteSummary) => void;
}) {
  const t = callWords();
  const id = useId();
  const { route } = useLocation();
  const { found, state } = useSiteSearch(typed);
  const [at, setAt] = useState(0);
  const [isClosed, setClosed] = useState(false);
  const field = useRef<HTMLInputElement>(null);
  useEffect(() => field.current?.focus(), []);
  useEffect(() => {
    setAt(0);
    setClosed(false);
  }, [typed]);
  const isOpen = typed.trim() !== '' && !isClosed && state !== 'unreachable';
  const entries = found.length + 1;
  const addNew = () => route(`/app/sites/new?call=${call}&client=${encodeURIComponent(typed.trim())}`);
  const choose = (index: number) => {
    const site = found[index];
    if (site === undefined) addNew();
    else onChoose(site);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const steps: Record<string, number> = { ArrowDown: at + 1, ArrowUp: at - 1, Home: 0, End: entries - 1 };
    const to = steps[event.key];
    const isInText = event.key === 'Home' || event.key === 'End';
    if (to !== undefined && isOpen && !isInText) {
      event.preventDefault();
      setAt((to + entries) % entries);
    } else if (event.key === 'Enter' && !event.ctrlKey && isOpen && state === 'found') {
      event.preventDefault();
      choose(at);
    } else if (event.key === 'Escape' && isOpen) {
      event.preventDefault();
      setClosed(true);
    }
  };
  return (
    <div class="finder">
      <label class="finder-label" for={id}>
        {t.who}
      </label>
      <span class="soft" id={`${id}-hint`}>
        {t.whoHint}
      </span>
      <input
        ref={field}
        id={id}
        class="field-control finder-field"
        type="text"
        role="combobox"
        autocomplete="off"
        spellcheck={false}
        aria-expanded={isOpen}
        aria-controls={`${id}-list`}
        aria-autocomplete="list"
        aria-describedby={`${id}-hint`}
        {...(isOpen ? { 'aria-activedescendant': `${id}-${at}` } : {})}
        value={typed}
        onInput={({ currentTarget }) => onType(currentTarget.value)}
        onKeyDown={onKeyDown}
      />
      <span class="soft" role="status">
        {state === 'searching' && `${t.searching} …`}
        {state === 'unreachable' && t.offline}
        {state === 'found' && (found.length === 0 ? t.nothingFound : t.found(found.length))}
      </span>
      <div class="finder-list" role="listbox" id={`${id}-list`} aria-label={t.who} hidden={!isOpen}>
        {found.map((site, index) => (
          <button
            type="button"
            class="finder-option"
            tabIndex={-1}
            key={site.id}
            id={`${id}-${index}`}
            role="option"
            aria-selected={index === at}
            onClick={() => onChoose(site)}
          >
            <strong>{site.client}</strong>
            <span>{site.address}</span>
            <span class="soft">
              {[site.contact.name, site.contact.phone, ...site.chains.map(({ name }) => name)]
                .filter((part) => part !== null)
                .join(' · ')}
            </span>
          </button>
        ))}

        <button
          type="button"
          class="finder-option"
          tabIndex={-1}
          id={`${id}-${found.length}`}
          role="option"
          aria-selected={at === found.length}
          onClick={addNew}
        >
          <span>+ {t.newSite(typed.trim())}</span>
        </button>
      </div>
    </div>
  );
}
