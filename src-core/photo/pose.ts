/**
 * How the camera stood over the sheet. The columns of a homography are those of the camera's turning, up to the
 * focal length: equally long and square to each other (§zhang). The focal length is not known; it is tried.
 */
import { homography, sheetCorners } from './homography'
import type { Corners, Homography } from './homography'

export interface Pose {
  /** How far the columns are from equally long and square; 0 for a sheet of just this shape. */
  readonly misfit: number
  /** Between the camera's direction and that straight down on the sheet, in degrees. */
  readonly tilt: number
}

/** Focal lengths as shares of the picture's longer side: wide to long lenses of phones. */
const FOCAL_SHARES = [0.55, 0.65, 0.75, 0.85, 1, 1.2, 1.5, 2, 3]
/** What a focal length off the usual costs, so that it is not bent to fit another sheet. */
const UNUSUAL_FOCAL = 0.01
const USUAL_FOCAL = 0.8

/** The pose that a mapping from millimetres to pixels (about the middle of the picture) says. */
function poseOf(matrix: Homography, focal: number, unusual: number): Pose {
  const column = (at: number) => [matrix[at]! / focal, matrix[at + 3]! / focal, matrix[at + 6]!] as const
  const [ax, ay, az] = column(0)
  const [bx, by, bz] = column(1)
  const a = Math.hypot(ax, ay, az)
  const b = Math.hypot(bx, by, bz)
  const cosine = (ax * bx + ay * by + az * bz) / (a * b)
  const normal = [ay * bz - az * by, az * bx - ax * bz, ax * by - ay * bx] as const
  return {
    misfit: Math.hypot(cosine, Math.log(a / b)) + unusual,
    tilt: (Math.acos(Math.min(1, Math.abs(normal[2]) / Math.hypot(...normal))) * 180) / Math.PI,
  }
}

/** The pose that fits four corners in a picture of this size best. */
export function bestPose(
  corners: Corners,
  sheet: { width: number; height: number },
  picture: { width: number; height: number },
): Pose {
  const about = corners.map(({ x, y }) => ({
    x: x - picture.width / 2,
    y: y - picture.height / 2,
  })) as unknown as Corners
  const matrix = homography(sheetCorners(sheet), about)
  const longer = Math.max(picture.width, picture.height)
  const poses = FOCAL_SHARES.map((share) =>
    poseOf(matrix, share * longer, UNUSUAL_FOCAL * Math.abs(Math.log(share / USUAL_FOCAL))),
  )
  return poses.reduce((best, pose) => (pose.misfit < best.misfit ? pose : best))
}

/** The corners begun so that the sheet's shape fits: the first side is its width. */
export function asSheet(
  corners: Corners,
  sheet: { width: number; height: number },
  picture: { width: number; height: number },
): { corners: Corners; pose: Pose } {
  const [a, b, c, d] = corners
  const upright = bestPose(corners, sheet, picture)
  const lying = bestPose([b, c, d, a], sheet, picture)
  return lying.misfit < upright.misfit ? { corners: [b, c, d, a], pose: lying } : { corners, pose: upright }
}
