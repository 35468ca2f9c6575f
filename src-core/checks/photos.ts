/** Pictures that are kept with motifs, and are none that can be shown. */
import type { Finding } from '../../shared-types/finding'
import type { Project } from '../../shared-types/project'
import { finding } from '../findings/finding'
import { KEPT_PIXELS, keptPicture } from '../photo/kept'

/** A finding for each motif whose photo is something else than a project keeps. */
export const checkPhotos = ({ motifs = [] }: Project): Finding[] =>
  motifs.flatMap((motif, at) =>
    motif.photo && !keptPicture(motif)
      ? [finding('motif/kept-photo', `motifs[${at}].photo.picture`, { most: KEPT_PIXELS[0] })]
      : [],
  )
