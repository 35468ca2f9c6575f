import type { CatalogueEntry } from './catalogue'

/** What can go wrong between the window and the machine. Each says what was kept. */
export const HOST_FINDINGS = {
  'app/bad-message': {
    severity: 'error',
    message: "the window asked for '{operation}' in a way that the program does not understand: {reason}.",
    mend: 'Nothing was changed. Close this window and open the project again.',
  },
  'app/too-large': {
    severity: 'error',
    message: 'this project takes {size} MB; the program keeps at most {limit} MB.',
    mend: 'Nothing was changed. Split the project in two, or shorten its notes.',
  },
  'app/old-revision': {
    severity: 'error',
    message: 'a change arrived after a later one (number {received} after {held}).',
    mend: 'The later one is kept. Close this window and open the project again.',
  },
  'app/open-elsewhere': {
    severity: 'error',
    message: 'this project is now open in another window.',
    mend: 'Go on in the other window, or reload this one to take the project back.',
  },
  'app/cannot-open': {
    severity: 'error',
    message: '{words}',
    mend: 'Nothing was changed. Choose another file.',
  },
  'app/brought-up': {
    severity: 'note',
    message: 'this project was saved by an older version (file version {from}) and was brought up to {to}.',
    mend: 'Nothing needs doing. The file itself changes when it is saved next; a copy of the old one stays beside it.',
  },
  'app/not-kept': {
    severity: 'warning',
    message: 'not all of this file can be kept as it stands: {what}.',
    mend: 'Saving writes the nearest number, nothing for one that is too large, and the last of two values. A copy of the file stays beside it.',
  },
  'app/unknown-recent': {
    severity: 'error',
    message: 'this project is no longer where it was.',
    mend: 'Find it with Open, or remove it from the list.',
  },
  'app/unknown-example': {
    severity: 'error',
    message: "there is no example '{name}'.",
    mend: 'Choose one from the list.',
  },
  'app/cannot-keep': {
    severity: 'error',
    message: "what was changed is only in memory: the program's own folder cannot be written ({reason}).",
    mend: 'Save the project in another place now, or make room there: writing is tried again every few seconds.',
  },
  'app/no-backup': {
    severity: 'note',
    message: "'{file}' was saved, but no copy of what it held before could be kept beside it: {reason}.",
    mend: 'Nothing of the project is missing. Save a copy elsewhere if you want to keep this state.',
  },
  'app/taken-over': {
    severity: 'warning',
    message: 'this project was opened in another window while this one was stopped.',
    mend: 'What was changed here is kept as a project of its own, beside the other one. Close the window whose project you do not want to go on with.',
  },
  'app/own-folder': {
    severity: 'warning',
    message: "the program's own folder, {folder}, cannot be written: {reason}.",
    mend: 'A project with a file of its own is saved there as usual; save any other now, or its changes are only in memory. Writing is tried again every few seconds.',
  },
  'app/cannot-write': {
    severity: 'error',
    message: '{reason}',
    mend: 'What was there is unchanged. Choose another place, or make room there.',
  },
  'app/font-refused': {
    severity: 'error',
    message: 'this font cannot be used: {reason}.',
    mend: 'Choose another .ttf or .otf file.',
  },
  'app/cannot-print': {
    severity: 'error',
    message: 'nothing was printed: {reason}.',
    mend: 'Check that a printer is set up and switched on, or export the pages as PDF and print that.',
  },
  'app/saving-waits': {
    severity: 'warning',
    message: '{reason}',
    mend: "Everything is kept in the program's own folder meanwhile. Save it in another place, or try again later.",
  },
  'app/changed-on-disk': {
    severity: 'warning',
    message: "'{file}' was changed by another program since it was read here.",
    mend: 'Keep your version (the other one stays beside it as a backup copy), or take the one on disk.',
  },
  'app/gone-from-disk': {
    severity: 'warning',
    message: "'{file}' is no longer where it was.",
    mend: 'Save writes it there again; Save As puts it in another place.',
  },
  'app/nothing-on-disk': {
    severity: 'error',
    message: "there is no version of '{file}' on disk to take.",
    mend: 'Your version is unchanged. Save writes it there again.',
  },
  'app/host-gone': {
    severity: 'error',
    message:
      'Petalyard does not answer this window. It was stopped, or something on this machine keeps it from answering.',
    mend: 'What was changed until then is kept, and this window goes on by itself once Petalyard answers. If it was stopped, save a copy of what was changed since, and start it again.',
  },
  'app/updated': {
    severity: 'warning',
    message: 'Petalyard was updated while it ran.',
    mend: 'Everything that you entered is kept. Close Petalyard and start it again: until then no window opens, and nothing is printed or exported.',
  },
  'app/shut-out': {
    severity: 'error',
    message: 'the address that opened this window was used a second time, so Petalyard shut this window out.',
    mend: 'What was changed until then is kept. Press Enter in the terminal where Petalyard runs: this window goes on once its browser is let in again.',
  },
  'app/not-planned': {
    severity: 'error',
    message: 'this project cannot be calculated as it is now: {reason}.',
    mend: 'Undo the last change, or correct it. The last plan is shown; everything that you entered is kept.',
  },
  'app/not-shown': {
    severity: 'error',
    message: 'this project cannot be shown: {reason}.',
    mend: 'Everything that you entered is kept. Save a copy of it, or go on with another project.',
  },
  'app/not-opened-before': {
    severity: 'warning',
    message: 'the program ended twice while it opened this project.',
    mend: 'Everything that you entered is kept. Try again, save a copy of it, or go on with another project.',
  },
  'app/cannot-show': {
    severity: 'error',
    message: 'The system cannot show {what}: {reason}.',
    mend: 'They are in the folder of the program: LICENSES.chromium.html and LICENSE.electron.txt.',
  },
  'app/failed': {
    severity: 'error',
    message: '{task} did not work: {reason}.',
    mend: 'The project is unchanged. Try again; if it fails again, please report it.',
  },
} as const satisfies Record<string, CatalogueEntry>
