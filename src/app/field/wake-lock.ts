/** Keeps the screen awake while wanted: the lock is lost whenever the window is hidden, and taken again when it is back. */

export type AwakeState = 'off' | 'on' | 'not-possible' | 'refused';

export interface Awake {
  set(wanted: boolean): Promise<void>;
  stop(): void;
}

export function keepAwake(tell: (state: AwakeState) => void): Awake {
  let wanted = false;
  let lock: WakeLockSentinel | null = null;
  const take = async () => {
    if (!wanted || lock || document.visibilityState !== 'visible') return;
    try {
      lock = await navigator.wakeLock.request('screen');
      lock.addEventListener('release', () => {
        lock = null;
      });
      tell('on');
    } catch {
      tell('refused');
    }
  };
  const back = () => void take();
  document.addEventListener('visibilitychange', back);
  return {
    async set(now) {
      wanted = now;
      if (!('wakeLock' in navigator)) return tell(now ? 'not-possible' : 'off');
      if (now) return take();
      await lock?.release();
      tell('off');
    },
    stop() {
      wanted = false;
      document.removeEventListener('visibilitychange', back);
      void lock?.release();
    },
  };
}
