/** Hands a text to the phone as a file: to its share sheet where there is one, else as a download. */
export function offerFile(name: string, text: string): void {
  const file = new File([text], name, { type: 'application/json' });
  const touch = matchMedia('(pointer: coarse)').matches;
  if (touch && typeof navigator.canShare === 'function' && navigator.canShare({ files: [file] })) {
    // A person who closes the share sheet has decided; the download would only be in the way.
    void navigator.share({ files: [file], title: name }).catch((error: unknown) => {
      if (!(error instanceof DOMException && error.name === 'AbortError')) download(file);
    });
  } else download(file);
}

function download(file: File): void {
  const url = URL.createObjectURL(file);
  const link = document.createElement('a');
  link.href = url;
  link.download = file.name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}
