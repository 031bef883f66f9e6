namespace PlatformForge.Projects.Catalogue;

/// <summary>PF1: the project file, its keys, options that name keys, measured gaps.</summary>
internal static class ProjectEntries
{
    public static readonly FindingEntry[] All =
    [
        new(
            "PF1001",
            "A file is not there, or may not be read.",
            "Check its name, large and small letters told apart, and that you may read it.",
            Reasons.File,
            "Absent or barred, the file cannot be read."),
        new("PF1002", "A folder is named where a file is wanted.", "Name the file in it.", Reasons.File),
        new("PF1003", "A file is larger than is taken.", "Keep it below the limit that the message names; readings go into a file of their own.", Reasons.File),
        new(
            "PF1004",
            "A file is not text in UTF-8.",
            "Save it from a text editor as plain text in UTF-8.",
            Reasons.File,
            "Nil bytes or others that UTF-8 does not have: either way it is no such text."),
        new(
            "PF1005",
            "A file is not well-formed TOML.",
            "Mend the line that the message names.",
            "Until the file can be read there is no key to set.",
            "Each is a way to break the grammar."),
        new("PF1006", "A key means nothing where it stands.", "Spell it as the message says, move it to where it belongs, or leave it out."),
        new(
            "PF1007",
            "A value is of the wrong kind: a text for a number, a number for a table.",
            "Write a value of the kind that the message names.",
            OneThing: "A length that is no length is a value of the wrong kind too."),
        new(
            "PF1008",
            "A value is outside what the key takes.",
            "Give a value that the message names.",
            OneThing: "Numbers and texts each have what they take."),
        new(
            "PF1009",
            "A key is missing.",
            "Add it; the message tells what it holds.",
            OneThing: "Some keys are needed only beside others; each place knows its own."),
        new(
            "PF1011",
            "A name is none of those that can be chosen: a word of a key, a preset, a sample, a file beside the project.",
            "Take one of the names that the message lists, or that the command presets lists.",
            OneThing: "All are names out of a list that is known."),
        new(
            "PF1012",
            "A list has too few entries or too many.",
            "Give as many as the message says.",
            "Which entries to add or leave out is the user's to choose."),
        new(
            "PF1013",
            "Keys stand together that exclude each other, or neither of two is there.",
            "Keep one of them, or give one.",
            OneThing: "Each pair of keys has its own words."),
        new(
            "PF1014",
            "Two figures of the file do not go together.",
            "Change one of them; the message tells the bound that the other sets.",
            OneThing: "Each pair of figures has its own words."),
        new("PF1015", "Two things of a kind have the same name.", "Give each a name of its own."),
        new("PF1016", "A name refers to nothing in the file.", "Take the name of something that is there."),
        new("PF1017", "An option is not written as it has to be.", "Write it as the message shows.", Reasons.Option, "Each option has its own form."),
        new(
            "PF1088",
            "What a first file was asked for with makes no sound platform.",
            "Take the value that the message says: it was tried.",
            Reasons.Option),
        new("PF1018", "An option sets a key that has no place in the file.", "Name an entry that is there.", Reasons.Option),
        new("PF1019", "Values to compare make too many designs.", "Vary fewer keys, or give fewer values.", Reasons.Option),
        new(
            "PF1020",
            "A new file cannot be written.",
            "Choose another name or folder, or replace the file with --force.",
            Reasons.Option,
            "In the way or not allowed, the file is not written."),
        new("PF1021", "A built folder does not tell its scale.", "Build the folder again.", Reasons.Rebuilt),
        new("PF1022", "A surveyed track is asked for that there is not.", "Name a track that has a survey.", Reasons.Option),
        new("PF1023", "The chord for string lining is longer than the track allows.", "Give a shorter chord.", Reasons.Option),
        new("PF1030", "A table of measured gaps holds none.", "Write a row for each gap measured.", Reasons.File),
        new("PF1031", "A measured gap is below nil.", "Write 0 where the vehicle touches.", Reasons.Measured),
        new("PF1032", "A measured gap does not say at which platform it was taken.", "Name one of the project's platforms in its row.", Reasons.Measured),
        new("PF1033", "A chainage or section that is asked for is none.", "Give a number within the platform.", Reasons.Option),
        new("PF1040", "A file is empty, or a pipe or a device.", "Name a plain file with something in it.", Reasons.File),
        new(
            "PF1041",
            "A project file goes beyond a limit of depth, count or length.",
            "Keep below the limit that the message names; docs/limits.md lists them.",
            "What to leave out is the user's to choose."),
        new(
            "PF1042",
            "A key that was closed in brackets is given again under a heading.",
            "Write all of it in one of the two places.",
            "Which of the two is meant is the user's to say."),
        new(
            "PF1089",
            "A scale is called by a name or a ratio that several have.",
            "Give the name of one of them.",
            "Which of them is meant is the user's to say.",
            "In a project and in an option it is the same name."),
        new("PF1070", "A code is asked for that no finding has.", "Take one that the command findings lists.", Reasons.Option),
        new(
            "PF1071",
            "A key or a heading stands in a file twice.",
            "Keep one of the two, or write a heading with double brackets where there may be several.",
            "Which of the two is meant is the user's to say."),
    ];
}
