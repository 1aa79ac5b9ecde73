/** Keeps the screen on while a pour goes on. */

/** Keeps it on, also after the phone was put aside; gives the way to let it go. */
export function keepAwake(): () => void {
  let lock: WakeLockSentinel | null = null;
  let over = false;
  const take = async (): Promise<void> => {
    if (over || document.visibilityState !== 'visible') return;
    try {
      lock = await navigator.wakeLock.request('screen');
      if (over) void lock.release();
    } catch {
      // A phone that spares its battery, or a browser without it: the clocks go on all the same.
    }
  };
  document.addEventListener('visibilitychange', take);
  void take();
  return () => {
    over = true;
    document.removeEventListener('visibilitychange', take);
    void lock?.release();
  };
}
