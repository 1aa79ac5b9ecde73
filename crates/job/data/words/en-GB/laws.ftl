# What stands beside laws: workings on paper, `oddside why` and `oddside reckon`.
#
# The laws describe themselves in English only, so these pages are English as a whole and no other
# language has these messages.

## The words before what stands behind a figure

behind-because = because
behind-given = given
behind-taken = taken
behind-range = holds for
behind-narrower = narrower
behind-narrower-told = { $key } known exactly leaves { $left } of the band
behind-narrower-how = { $key } known exactly leaves { $left } of the band ({ $how })
behind-mind = mind
behind-doubt = doubt
behind-source = source
behind-again = again
reckon-asks-for = asks for
reckon-like = like
reckon-needed = needed
reckon-not-needed = not needed
reckon-else = else { $text }
reckon-of-the-metal = else that of the metal
reckon-list-foot = oddside reckon NAME tells what a law asks for; oddside reckon NAME key=figure … works it out.
reckon-range-foot = Any figure may be a range: "3 to 5 mm", "100 mm ± 2 mm".

## Workings

workings-title = Workings
workings-sheet = { $job }, sheet { $code }, { $by }
workings-given = Given: { $given }.
workings-because = Because: { $because }.
workings-range = Holds for: { $range }.
workings-numbers = Sources { $numbers }.
workings-sources = Sources
