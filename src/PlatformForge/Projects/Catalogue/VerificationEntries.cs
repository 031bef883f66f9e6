namespace PlatformForge.Projects.Catalogue;

/// <summary>PF8: what was written, held against the trains.</summary>
internal static class VerificationEntries
{
    public static readonly FindingEntry[] All =
    [
        new("PF8001", "A folder is none that this program built.", "Name a folder that it built.", Reasons.Folder),
        new("PF8002", "A file that the manifest names is not there.", "Build the folder again.", Reasons.Rebuilt),
        new(
            "PF8003",
            "A file is not as it was written.",
            "Build the folder again.",
            Reasons.Rebuilt,
            "Told by its length or by its bytes: either way it is another."),
        new("PF8004", "There is no design copy to hold the sections against.", "Build the folder again.", Reasons.Rebuilt),
        new("PF8005", "A section differs between its STL and its 3MF file.", "Build the folder again.", Reasons.Rebuilt),
        new("PF8006", "A section is on its plate more than once, or not at all.", "Build the folder again.", Reasons.Rebuilt),
        new("PF8010", "A mesh is not watertight.", "Build the folder again.", Reasons.Rebuilt),
        new("PF8011", "A mesh has triangles without area.", "Build the folder again.", Reasons.Rebuilt),
        new("PF8012", "A mesh is inside out or empty.", "Build the folder again.", Reasons.Rebuilt),
        new("PF8013", "A section lies beyond the bed or its margin.", "Build the folder again for this bed.", Reasons.Rebuilt),
        new("PF8014", "A section is not on the bed, or higher than the printer.", "Build the folder again for this printer.", Reasons.Rebuilt),
        new("PF8015", "Two sections lie into each other on a plate.", "Build the folder again.", Reasons.Rebuilt),
        new("PF8016", "A wall is thinner than two lines of the nozzle.", "Make it thicker in the project, or print with a finer nozzle.", Reasons.Several),
        new(
            "PF8020",
            "A vehicle runs into a section.",
            "Build it again with this vehicle in the project, or take it off this track.",
            "The platform is built: it is designed anew with the vehicle in the project."),
        new(
            "PF8021",
            "A vehicle comes nearer to a section than play and budget allow.",
            "Build it again with this vehicle in the project, or make do with less.",
            "The platform is built: it is designed anew with the vehicle in the project."),
        new("PF8022", "A vehicle cannot stand beside the platform.", "Lay more track, or take the vehicle off it.", Reasons.Several),
        new("PF8031", "A section's motion to the layout bends or mirrors it.", "Build the folder again.", Reasons.Rebuilt),
        new("PF8032", "A section does not stand on the baseboard.", "Build the folder again.", Reasons.Rebuilt),
        new("PF8033", "A section lies across or beyond its track.", "Build the folder again.", Reasons.Rebuilt),
        new("PF8034", "Part of a platform has no section.", "Build the folder again.", Reasons.Rebuilt),
        new("PF8035", "The edge steps from one section to the next.", "Build the folder again.", Reasons.Rebuilt),
        new("PF8040", "A build is writing into the folder at this moment.", "Wait until the build has ended.", Reasons.Folder),
        new("PF8041", "A section belongs to a platform that the design copy does not know.", "Build the folder again.", Reasons.Rebuilt),
        new("PF8042", "The design copy names no platform.", "Build the folder again.", Reasons.Rebuilt),
        new("PF8043", "The design copy names no vehicle.", "Build the folder again.", Reasons.Rebuilt),
        new("PF8044", "What a 3MF file prints is scaled, skewed, mirrored or tipped over.", "Build the folder again.", Reasons.Rebuilt),
        new("PF8045", "A listed file to print holds no section of the manifest.", "Build the folder again.", Reasons.Rebuilt),
        new("PF8046", "A 3MF file prints something that is no section of it.", "Build the folder again.", Reasons.Rebuilt),
        new("PF8047", "The folder holds a file to print that the manifest does not list.", "Move it elsewhere.", Reasons.Folder),
        new(
            "PF8048",
            "A section lies otherwise in the file of all plates than on its own, or a plate lies off its bed there.",
            "Print from the plate's own file, or build the folder again.",
            Reasons.Rebuilt),
        new("PF8049", "A section in a 3MF file is put together of other objects.", "Build the folder again.", Reasons.Rebuilt),
        new("PF8050", "A line, a strip or a bank as written does not fit its section.", "Build the folder again.", Reasons.Rebuilt),
        new("PF8051", "A folder to be verified has no section: it was made without the set prints, or by paper, gauges or survey.",
            "Name a folder that was built with its prints.", Reasons.Folder),
        new("PF8052", "The manifest tells a name, a version, a hash or a figure otherwise than another file of the folder.", "Build the folder again.",
            Reasons.Rebuilt, "Which of the two was changed cannot be told: one sentence for whatever the two disagree in."),
        new("PF8053", "The manifest's sections do not follow one another by number and chainage from one end of their platform to the other.",
            "Build the folder again.", Reasons.Rebuilt),
        new("PF8054", "The figures of gauges and proofs are not of the form that the program writes.", "Build the folder again.", Reasons.Rebuilt),
        new("PF8055", "Something of a section stands over its deck where nothing is planned to.", "Build the folder again.", Reasons.Rebuilt),
        new("PF8070", "The walls of a section were not measured, since it has too many edges.", "Build the folder again.", Reasons.Rebuilt),
    ];
}
