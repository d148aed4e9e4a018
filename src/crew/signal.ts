/** What can be heard and felt: each where the phone has it, never the only sign. */

let audio: AudioContext | null = null;

/** A short high note for good, two low ones for a fault. */
function playTone(good: boolean): void {
  if (typeof AudioContext === 'undefined') return;
  audio ??= new AudioContext();
  const notes = good
    ? [[880, 0, 0.12]]
    : [
        [220, 0, 0.25],
        [165, 0.32, 0.35],
      ];
  for (const [pitch, after, length] of notes as [number, number, number][]) {
    const tone = audio.createOscillator();
    const level = audio.createGain();
    level.gain.value = 0.5;
    tone.type = 'square';
    tone.frequency.value = pitch;
    tone.connect(level).connect(audio.destination);
    tone.start(audio.currentTime + after);
    tone.stop(audio.currentTime + after + length);
  }
}

function say(words: string): void {
  if (typeof speechSynthesis === 'undefined') return;
  speechSynthesis.cancel();
  const spoken = new SpeechSynthesisUtterance(words);
  spoken.lang = 'en-US';
  speechSynthesis.speak(spoken);
}

/** Feels and, when sound is on, sounds and says whether a check is good. */
export function signalCheck(good: boolean, words: string, sound: boolean): void {
  if (typeof navigator.vibrate === 'function') navigator.vibrate(good ? 60 : [300, 120, 300]);
  if (!sound) return;
  playTone(good);
  say(words);
}
