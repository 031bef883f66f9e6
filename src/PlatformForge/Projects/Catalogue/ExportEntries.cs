namespace PlatformForge.Projects.Catalogue;

/// <summary>PF7: files and folders, written and read back.</summary>
internal static class ExportEntries
{
    public static readonly FindingEntry[] All =
    [
        new(
            "PF7101",
            "An STL file is cut short or is none.",
            "Build the folder again.",
            Reasons.Rebuilt,
            "Shorter than its head or than its count: either way it is cut short."),
        new("PF7102", "An STL file has a corner that is no number.", "Build the folder again.", Reasons.Rebuilt),
        new("PF7103", "An STL text file is broken.", "Build the folder again.", Reasons.Rebuilt),
        new("PF7104", "An STL file holds no triangle.", "Build the folder again.", Reasons.Rebuilt, "Binary or text, it is empty."),
        new(
            "PF7105",
            "An STL file goes beyond a limit of bytes, triangles or their size.",
            "Build the folder again.",
            Reasons.Rebuilt,
            "Each is a bound on what one section can be."),
        new(
            "PF7201",
            "A 3MF file is no whole ZIP archive, or goes beyond a limit of bytes.",
            "Build the folder again.",
            Reasons.Rebuilt,
            "Damaged, too long, or swelling when unpacked: nothing of it is taken."),
        new("PF7202", "A 3MF file lacks a part that the format demands.", "Build the folder again.", Reasons.Rebuilt),
        new("PF7203", "The model in a 3MF file cannot be read.", "Build the folder again.", Reasons.Rebuilt, "Each is a way to break the model."),
        new("PF7301", "The output folder cannot be made.", "Choose a folder that you may write to, with room on its disk.", Reasons.Folder),
        new("PF7302", "The output folder holds files of somebody else.", "Choose an empty folder, or force it.", Reasons.Folder),
        new("PF7303", "The output folder cannot be written.", "Choose a folder that you may write to, with room on its disk.", Reasons.Folder),
        new(
            "PF7304",
            "Files of the output folder were changed since they were written.",
            "Move what you changed elsewhere, or force it to be replaced.",
            Reasons.Folder),
        new("PF7305", "Another run is writing into the output folder.", "Wait until it has ended, or choose another folder.", Reasons.Folder),
        new(
            "PF7310",
            "A link stands in the output folder where a file of ours should go, or on the way to it.",
            "Remove the link, or choose another folder.",
            Reasons.Folder),
        new(
            "PF7311",
            "A run was stopped half-way, and files were changed since.",
            "Move what you changed elsewhere and run again, or force it.",
            Reasons.Folder),
        new("PF7312", "A run was stopped half-way, and its record cannot be read.", "Build into an empty folder, or force it.", Reasons.Folder),
        new(
            "PF7313",
            "A run was stopped half-way and cannot be brought to an end.",
            "Close what holds the files open, and run build or verify again.",
            Reasons.Folder),
        new(
            "PF7314",
            "A folder stands where a file should go, or a file where a folder should.",
            "Move it elsewhere, or choose another folder.",
            Reasons.Folder),
        new("PF7320", "The report cannot be read.", "Build the folder again.", Reasons.Rebuilt),
        new("PF7401", "The manifest cannot be read.", "Build the folder again.", Reasons.Rebuilt),
        new("PF7402", "The design copy cannot be read.", "Build the folder again.", Reasons.Rebuilt),
        new(
            "PF7440",
            "The margins leave too little of the paper for full-size sheets.",
            "Give smaller margins or larger paper.",
            OneThing: "Smaller margins are offered where they are enough, larger paper where they are not."),
        new(
            "PF7441",
            "What is given for a bar of 100 mm is no measurement of one.",
            "Measure both bars of a sheet printed at 100 % and without a correction, in mm.",
            Reasons.Measured,
            "Given by a key or by an option, it is the same slip."),
        new("PF7442", "Full-size sheets overlap by so much that little is left of each.", "Give a smaller overlap."),
        new("PF7443", "A platform would take more full-size sheets than anybody joins.", "Give larger paper."),
        new(
            "PF7500",
            "What is given for the strip of 100 mm is no measurement of one.",
            "Measure the strip printed without this key, along and across the bed, in mm.",
            Reasons.Measured),
        new(
            "PF7501",
            "The strip of 100 mm came out so far off that the printer should be looked at first.",
            "Measure it again, and see to belts and steps per mm.",
            Reasons.Note),
        new("PF7502", "Every piece is written longer or shorter, so that it comes out true on this printer.", "Print it as it lies in its file.", Reasons.Note),
        new("PF7503", "A measured fit does not reach an opening that states one of its own.", "Take that one out of the file.", Reasons.Note),
        new("PF7504", "A slide gauge is asked for where no platform is.", "Give a chainage that the message names."),
        new("PF7505", "A throw board is asked of something without wheels of its own.", "Name the vehicle that carries it.", Reasons.Several),
        new("PF7506", "A gauge or a proof is too large for the bed and left out.", "Use a larger bed or a smaller margin for it, or do without.",
            Reasons.Several),
        new("PF7507", "A slide gauge has no room for a finger between sleepers and wall.", "Give the width over your sleepers' ends, if they are shorter.",
            Reasons.Note),
        new("PF7508", "Slide gauges would touch what they measure.", "Give more air or less play."),
        new("PF7509", "The tongues of a gauge have so much play that they do not keep to the rails.", "Give less play."),
        new("PF7510", "A slide gauge would be too narrow between the rails to be printed: the nozzle is wide for the gauge, or the track bends too sharply "
            + "there.",
            "Give a finer nozzle, or a chainage away from the kink.", Reasons.Several),
        new("PF7511", "Part of a gauge or a proof has nothing under it while it prints.", "Let the slicer put supports there.", Reasons.Note),
        new("PF7512", "A footprint or a mask is thinner than two layers.", "Make it thicker."),
        new("PF7513", "A gauge or a proof has no room for the mark that tells it from others.", "Write it on with a pencil.", Reasons.Note),
        new("PF7520", "A slide gauge does not ride on both rails as it was written.", "Build the folder again.", Reasons.Rebuilt),
        new("PF7521", "A slide gauge does not go between the rails as it was written.", "Build the folder again.", Reasons.Rebuilt),
        new("PF7522", "A slide gauge touches the platform, or keeps less air than it says.", "Build the folder again.", Reasons.Rebuilt),
        new("PF7523", "A slide gauge rides on a track that the design copy does not know.", "Build the folder again.", Reasons.Rebuilt),
        new("PF7524", "A test slice or a footprint lies where no section of its platform is.", "Build the folder again.", Reasons.Rebuilt),
        new(
            "PF7530",
            "Sheets for cutting leave no room for a part.",
            "Give larger sheets or smaller margins.",
            OneThing: "Smaller margins are offered where they are enough, larger sheets where they are not."),
        new(
            "PF7531",
            "Relief slots are too narrow for the strip, or wider than it is thick.",
            "Give the width that your saw or blade takes away.",
            OneThing: "Either way the slot does not go with the strip, and its width is what mends it."),
        new(
            "PF7532",
            "The platform is too low or too narrow to be made from sheet of this thickness.",
            "Give thinner sheet.",
            OneThing: "Height and width are used up by the same material."),
        new("PF7533", "A section's deck is not one plane, and sheet cannot follow it.", "Cut it at the ramp heads, or make sections shorter.", Reasons.Several),
        new(
            "PF7535",
            "Relief slots cannot be so near that a strip keeps to its wall's line.",
            "Give a larger versine, or narrower slots."),
        new("PF7542", "A platform whose walls lean is asked for as sheet.", "Give no batter: strips then stand where the wall's foot does."),
        new("PF7536", "A platform on a trestle is asked for as sheet.", "Build bents from strip by the drawing of the trestle, or leave the trestle out."),
        new("PF7534", "A part is larger than a sheet.", "Give larger sheets, or more cuts."),
        new("PF7444", "A set of files is asked for that there is not.", "Name sets that there are.", Reasons.Option),
    ];
}
