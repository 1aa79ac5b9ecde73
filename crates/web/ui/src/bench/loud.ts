/** Sounds that are heard beside a furnace, and the shake of the phone with them. */
import type { Sound } from './clock';

/** Each sound as tones of so many hertz and seconds; square waves carry best through noise. */
const TONES: Record<Sound, [hertz: number, seconds: number][]> = {
  tick: [[880, 0.12]],
  likely: [
    [1320, 0.25],
    [0, 0.1],
    [1320, 0.25],
  ],
  end: [
    [1760, 0.3],
    [0, 0.1],
    [1760, 0.3],
    [0, 0.1],
    [1760, 0.6],
  ],
};

let audio: AudioContext | null = null;

/** Makes ready to sound: browsers let a page sound only after a tap. */
export function wakeSound(): void {
  try {
    audio ??= new AudioContext();
    void audio.resume();
  } catch {
    // No sound here: digits and the shake of the phone are left.
  }
}

/** Sounds, and shakes the phone where it can be shaken. */
export function sound(which: Sound): void {
  const tones = TONES[which];
  navigator.vibrate?.(tones.map(([, seconds]) => seconds * 1000));
  if (!audio) return;
  let at = audio.currentTime;
  for (const [hertz, seconds] of tones) {
    if (hertz > 0) tone(audio, hertz, at, seconds);
    at += seconds;
  }
}

function tone(audio: AudioContext, hertz: number, at: number, seconds: number): void {
  const wave = audio.createOscillator();
  const loud = audio.createGain();
  wave.type = 'square';
  wave.frequency.value = hertz;
  loud.gain.value = 0.9;
  wave.connect(loud).connect(audio.destination);
  wave.start(at);
  wave.stop(at + seconds);
}
