/**
 * Hands a text to the browser as a file to save.
 *
 * @param name - file name with its ending
 * @param file - the text and its media type
 */
export function saveFile(name: string, file: { readonly text: string; readonly type: string }): void {
  const url = URL.createObjectURL(new Blob([file.text], { type: file.type }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => {
    URL.revokeObjectURL(url);
  }, 10_000);
}
