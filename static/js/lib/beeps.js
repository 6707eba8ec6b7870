/** Short tones from WebAudio. A phone only lets sound out after a touch, so `wakeSound` is called from one. */

let audio = null;

export function wakeSound() {
  if (!("AudioContext" in globalThis)) return;
  if ("audioSession" in navigator) navigator.audioSession.type = "transient";  // lowers the person's music, does not stop it
  if (audio && audio.state !== "running") { audio.close().catch(() => {}); audio = null; }  // after a call some phones never resume
  audio ??= new AudioContext();
  audio.resume().catch(() => {});
}

export function beep(pitch_hz = 880, length_s = 0.18) {
  if (!audio || audio.state !== "running") return;
  const tone = audio.createOscillator();
  const volume = audio.createGain();
  tone.frequency.value = pitch_hz;
  volume.gain.setValueAtTime(0.5, audio.currentTime);
  volume.gain.exponentialRampToValueAtTime(0.001, audio.currentTime + length_s);
  tone.connect(volume).connect(audio.destination);
  tone.start();
  tone.stop(audio.currentTime + length_s);
}
