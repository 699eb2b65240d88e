import { useEffect, useState } from 'preact/hooks';

/** The moment it is, UTC in ISO 8601, anew every so many milliseconds while the screen is seen. */
export function useNow(everyMs: number): string {
  const [now, setNow] = useState(() => new Date().toISOString());
  useEffect(() => {
    const tick = () => setNow(new Date().toISOString());
    const timer = setInterval(tick, everyMs);
    document.addEventListener('visibilitychange', tick);
    return () => {
      clearInterval(timer);
      document.removeEventListener('visibilitychange', tick);
    };
  }, [everyMs]);
  return now;
}

/** Keeps the screen on, where the browser can; resolves to nothing, shows whether it does. */
export function useScreenOn(): boolean {
  const [isOn, setOn] = useState(false);
  useEffect(() => {
    let lock: WakeLockSentinel | null = null;
    let isWanted = true;
    const ask = async () => {
      if (!('wakeLock' in navigator) || document.visibilityState !== 'visible' || lock !== null) return;
      const got = await navigator.wakeLock.request('screen').catch(() => null);
      if (!isWanted) return void got?.release();
      lock = got;
      setOn(got !== null);
      got?.addEventListener('release', () => {
        lock = null;
        if (isWanted) setOn(false);
      });
    };
    void ask();
    // The lock is gone when the screen was locked or another program came up.
    document.addEventListener('visibilitychange', ask);
    return () => {
      isWanted = false;
      document.removeEventListener('visibilitychange', ask);
      void lock?.release();
    };
  }, []);
  return isOn;
}
