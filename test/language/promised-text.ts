/** Core syntax that is promised to keep working, every statement of it in one file. */
export const PROMISED = `bar "Wattlebird one-tooth"

thickness 12 mm
material  wear_steel_450                 # from the built-in table, or:  density 7850 kg/m^3

let reach = 130 mm                       # spin axis to the tooth tip
let tail  = 96 mm                        # spin axis to the far end
let waist = 24 mm

outline {
  from  (reach, 0 mm)                    # the tip; the first point of a closed loop
  line  (reach - 6 mm, -22 mm)
  arc   (20 mm, -waist) radius 160 mm turning right   # turning left = counter-clockwise
  line  (-tail, -waist) round 14 mm      # round: fillet this corner;  bevel 3 mm: cut it
  line  (-tail, waist)  round 14 mm
  line  (30 mm, waist)
  arc   (104 mm, 16 mm) through (70 mm, 26 mm)
  close                                  # straight back to the first point
}

bore 22 mm                               # round hole on the spin axis
hole (0 mm, 17 mm) diameter 6.5 mm
hole ring 4 at radius 40 mm diameter 6.5 mm from 45 deg
slot (-60 mm, 0 mm) to (-48 mm, 0 mm) width 8 mm
cutout { from (-84 mm, -6 mm) line (-74 mm, -6 mm) line (-74 mm, 6 mm) close }   # any inner loop

spin     4200 rpm ccw                    # as drawn: ccw or cw
approach 0.5 m/s to 6 m/s                # closing speeds to study
target   edge                            # what it meets: edge | face | round 5 mm, optionally  offset 12 mm

require mass <= 1.6 kg
require balance <= G40

variant "long tail" { tail = 110 mm }    # a named set of overrides of lets and settings
`;
