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
