"""Cautions of a ticket: the usual ones, told again where the work can hurt."""

IRON = "Hot iron: press and lift with your fingers out of the steam, stand it safely, unplug it when you leave."
BLADE = "Blades: close the rotary cutter each time it leaves the cloth, cut away from yourself, hand shears over by the handles."
PINS = "Pins: count them out and count them back; none in the mouth."
NEEDLE = "Needle: foot off the pedal when fingers go near, pins out before the foot reaches them, eyes protected; find every bit of one that breaks."
DEFER = "The maker’s manual of each tool and the rules of your own workroom and country come first."
