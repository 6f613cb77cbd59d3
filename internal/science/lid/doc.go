// Package lid says where the centres of n holes go in a lid, and how good that
// provably is.
//
// A Region is the free part of a lid: inside each outline by a margin, and
// away from each keep-clear shape. Optima finds how points are as far apart as
// can be: the widest layout, and one on a ruler's marks. MostAt lays as many as
// keep a wanted distance; Rows lays them in rows on marks; Bound proves how
// much better any other layout could be; Choose picks the best of holes that
// are already there.
//
// All lengths are millimetres. Effort is counted in starts, never timed, and
// randomness comes from the seed alone: the same question gives the same
// answer, bit for bit, whichever processor it runs on. To that end every
// product in the search is converted before it is added, which forbids fused
// multiply-add, and no trigonometry is used.
package lid
