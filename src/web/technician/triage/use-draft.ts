import { useEffect, useRef, useState } from 'preact/hooks';
import { memberDatabase } from '../../store/member-database.ts';

/** What is half written in a form, kept on this device over a reload or a dead battery until it is sent. */
export function useDraft<Value extends object>(
  key: string,
  empty: Value,
): [Value, (part: Partial<Value>) => void, () => Promise<void>] {
  const [value, setValue] = useState(empty);
  const touched = useRef(false);
  useEffect(() => {
    touched.current = false;
    let isWanted = true;
    void memberDatabase()
      .then((database) => database?.get('drafts', key))
      .then((kept) => {
        if (isWanted && !touched.current)
          setValue(kept === undefined ? empty : { ...empty, ...(kept as Value) });
      });
    return () => {
      isWanted = false;
    };
  }, [key]);
  const change = (part: Partial<Value>) => {
    touched.current = true;
    const next = { ...value, ...part };
    setValue(next);
    void memberDatabase().then((database) => database?.put('drafts', next, key));
  };
  const forget = async () => {
    touched.current = true;
    setValue(empty);
    await (await memberDatabase())?.delete('drafts', key);
  };
  return [value, change, forget];
}
