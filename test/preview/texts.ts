/** Texts of the preview's own tests: the samples may change. */

export const TWO_TOOTH = `bar "Mud Gannet"

thickness 12 mm
material wear_steel_450

let reach = 130 mm
let waist = 26 mm
let face = 18 mm

outline repeat 2 {
  from (reach, 0 mm)
  line (reach - face, 0 mm) round 3 mm
  line (reach - face - 12 mm, waist) round 8 mm
  line (14 mm - reach, waist) round 4 mm
  line (-reach, 0 mm)
}

bore 25 mm
hole (42 mm, 0 mm) diameter 12.5 mm
hole (-42 mm, 0 mm) diameter 12.5 mm

spin 4200 rpm ccw
approach 0.5 m/s to 6 m/s
target edge

require mass <= 1.4 kg
require balance <= G6.3
require tip_speed <= 90 m/s

variant "practice speed" { spin 1800 rpm ccw }
variant "long reach" { reach = 142 mm }
`;

export const ONE_TOOTH = `bar "Salt Kite"

thickness 10 mm
material wear_steel_500

let reach = 125 mm
let tail = 84 mm
let waist = 24 mm

outline {
  from (reach, 2 mm)
  line (reach - 20 mm, 4 mm) round 4 mm
  line (reach - 34 mm, waist) round 10 mm
  line (-tail, waist) round 14 mm
  line (-tail, -waist) round 14 mm
  line (reach - 16 mm, -waist) round 5 mm
  close
}

bore 22 mm
hole (36 mm, 0 mm) diameter 10.5 mm
hole (-36 mm, 0 mm) diameter 10.5 mm

spin 4800 rpm ccw
approach 0.5 m/s to 6 m/s
target edge

require mass <= 1.2 kg
require balance <= G16
`;
