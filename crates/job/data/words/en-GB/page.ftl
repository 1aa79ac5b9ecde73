# The page in the browser.

## A blank sheet, and the jobs of the folder

page-start = A blank sheet
page-part = part
page-choose-mesh = choose a mesh of it
page-drop-mesh = or drop one anywhere on this sheet: STL, OBJ, PLY or 3MF
page-name-of-job = name of the job
page-in-metal = to be cast in
page-make = Start the sheet
page-all-jobs = All jobs
page-no-jobs = No job lies in this folder yet.
page-unreadable = its file cannot be read
page-loading = A moment: this is being worked out.

## A mesh without a unit

page-unsettled = The mesh has to be settled first
page-unit-of-mesh = How large is the part?
page-unit-unknown = The mesh does not say what its numbers are. Here it is in each unit, to scale: choose the one that is true.
page-beside-hand = beside a hand
page-beside-pencil = beside a pencil

## The strip and the head

page-what-to-do = What to do with this sheet
page-undo = Undo
page-redo = Redo
page-on-paper = on paper
page-print = Print
page-is-changed = changed
page-working = A moment: the sheet is worked out anew.
page-server-gone = Oddside does not answer. What you typed is kept here and sent as soon as it does; start it again if it was stopped.
page-stops = STOP: do not pour this job as it stands
page-red-lines = Red lines: each has to be true before you melt
page-remarks = Remarks

## What is typed

page-typed-for = What is typed
page-change = change
page-taken-as = taken as
page-blank = left blank
page-unset = left to the program
page-empty-leaves = Left empty, it is left to the program.
page-like = Typed like
page-keep = Keep
page-give-up = Give up
page-yes = yes
page-no = no
page-another-change = This was changed meanwhile, in another window or in the file itself. Which of the two is to stand?
page-theirs = stands there now
page-mine = typed here
page-keep-theirs = Leave what stands there
page-use-mine = Put mine in its place

## Why

page-why = why
page-because = What sets it
page-formula = Formula
page-with-numbers = With numbers
page-given = What went in
page-range = Where it holds
page-narrow = What would narrow it
page-mind = To mind
page-sources = Sources
page-close = Close

## The drawing

page-the-mould = The mould
page-flat = Plan and section
page-no-solid-view = This browser draws no solids; the flat drawing says the same.
page-stale = The program was renewed since this page was opened: load the page again.
page-point-at = Point at a piece to read its name.
page-turning = Arrow keys turn the mould, + and - come nearer and go back, Home puts it back as it stood; the buttons do the same.
page-cut = cut open
page-cut-along = cut along
page-cut-across = cut across
page-apart = take apart
page-turn-left = Turn left
page-turn-right = Turn right
page-tip-up = From above
page-tip-down = From below
page-nearer = Nearer
page-farther = Farther
page-put-back = Put back
page-save-picture = Save the picture

## Maps on the drawing

page-map-of = Shown
page-map-mould = the mould
page-map-darker = Darker is more.
page-map-nothing = no value there
page-map-cross = Point at a place to read its value, or move the cross there: Shift with the arrow keys, the picture having the cursor.
page-map-legend = What the tones mean
map-wall = wall
map-draught = draught
map-undercut = undercut
map-modulus = modulus
map-freezing = freezing
map-wall-tells = How thick the metal is behind each place of the skin: the largest ball that fits there. The thickest is { $most }, and freezes last.
map-draught-tells = How much draught walls lack for their depth: { $area } of them lack some, up to { $most }. The pattern is given it unless you say otherwise.
map-draught-none = How much draught walls lack for their depth: none lacks any.
map-undercut-tells = What of the skin draws neither way: { $area } of it, with { $held } of sand held behind.
map-undercut-none = What of the skin draws neither way: nothing, all of it leaves the sand.
map-modulus-tells = The modulus of each place, metal over the surface that cools it. The heaviest has { $most }; times of freezing go by its square.
map-freezing-tells = When each place is solid, as followed on the mould. The last metal is solid after { $last }.
page-map-beyond = and more

## Gates and feeders moved on the plan

page-handles = Gates and feeders on the joint: drag one, or choose it and move it with the arrow keys, 1 mm at a time.

## The pattern leaving the sand

page-draw-out = pattern drawn
page-draw-play = Show it move
page-draw-halt = Hold it
page-draw-tells = The cope is lifted away, then the pattern is drawn up out of the drag.

## Longer work

page-freezing = Following the freezing
page-follow = Follow the freezing
page-follow-tells = The heat of the poured mould is followed until all is solid: when each place freezes, what is cut off, when it may be opened. It takes minutes, goes on when this page is closed and when the program was killed, and is kept in the folder of the job.
page-run-under-way = under way
page-run-waits = waits for the one before it
page-run-left = left, about
page-run-stop = Stop it
page-run-stopped = stopped; followed again, it goes on from there
page-run-done = done; it is kept in the folder of the job
page-run-given-up = stopped
page-runs = Under way
page-feeder = The smallest feeder that feeds
page-feeder-tells = The mould is built with feeders of several sizes, and each is followed until all is solid. It takes minutes, and goes on when this page is closed.
page-feeder-search = Look for it
page-run-failed = it came to nothing:
page-run-fresh = The freezing of this very mould was followed. The section goes through the place that is solid last; its lines bear minutes.
page-run-stale = A freezing was followed, but of another plan: follow it anew.

## Sand and shop

page-sand = Sand
page-shop = Shop
page-heap = The heap
page-ask-water = How wet it is, and what it lacks
page-ask-dry = The weight to dry to
page-ask-stand = How long a mould may stand
page-ask-recipe = A mix, weighed out
page-ask-fill = Fill in what you know; what is left empty is taken as in the books.
page-ask-go = Work it out
page-settings = Units and words
page-furnace = The furnace

## Experiments

page-trials = Experiments
page-trial-none = No experiment lies in this folder yet. Start one with:
page-trial-plan = Keep this plan
page-trial-more = Add a batch that the results speak for
page-trial-cards = Batch cards
page-trial-open = not measured yet
page-trial-differs = { $name } of batch { $batch } stands at { $before }, and now { $now } is typed. How is that meant?
page-trial-far = { $name } of batch { $batch }: { $now } lies far from all others ({ $low } to { $high }). Is it right?
page-trial-off-plan = { $name } of batch { $batch }: { $now } weighed, and { $planned } planned. Is it right?
page-trial-replace = The first was wrong; it stays in the file
page-trial-again = The batch was measured again
page-trial-sure = It is right
page-pictures = Charts

## The log

page-log = Log
page-log-new = Write a pour down
page-log-of-job = what was poured
page-log-planned = planned:
page-log-good = good ones, of
page-log-write = Write it down
page-log-written = It stands in the log.
page-log-empty = No pour stands in the log yet.
page-log-pour = Pour { $number } · { $job } · { $metal }
page-log-mould = Mould { $number } and its sand
page-log-heat = Heat { $number }
page-log-casting = Casting { $number }
page-log-look = What is wrong with it?
page-log-record = What was written down that day
page-log-causes = What may it come from?
page-log-wrong = Something came out wrong
page-log-asked = What contradicts itself
page-log-accept = Take into the shop's file:

## The sand on the page

page-sand-tests = The sand as it was tested
page-sand-book = The book of the heap
page-sand-nothing = Nothing follows yet: fill in what you have tested.

## A part that is described

page-described = how it is given
page-as-mesh = a mesh
page-like-what = what it is like

## A class, and the words of the trade

page-lesson = Lesson
page-lesson-class = The class
page-lesson-pupils = pupils, a casting for each
page-lesson-sessions = lessons in which they come
page-lesson-minutes = minutes of a lesson
page-lesson-adults = grown-ups at the fire
page-lesson-flasks = flasks of the plan's size
page-lesson-flasks-left = those of the shop's file
page-lesson-lay = Lay out the lessons
page-lesson-plan = Plan for the class
page-lesson-tasks = What a pupil works out
page-lesson-answers-apart = The answers are printed on a sheet of their own. They do not stand on this page, where a class may be looking on.
page-glossary = Glossary
page-glossary-seek = a word, or a part of one, in any language
page-glossary-count = words found:
page-glossary-none = No entry has this word.
page-glossary-words = Words of the trade
page-glossary-sheet = Words of the trade on this sheet

## The bench card of a job

page-bench-card = Bench card
page-bench-phone = On a paired phone: point its camera at the squares, or open
page-bench-no-phone = For a phone in gloves: start the program as oddside serve DIR --lan, and the squares for its camera stand here.
page-lead = Fill in:
