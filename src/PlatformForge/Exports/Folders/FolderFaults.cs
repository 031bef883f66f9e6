using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Exports.Folders;

/// <summary>The faults that a folder can have before or while it is written.</summary>
internal static class FolderFaults
{
    private const int NamedAtMost = 3;

    public static Finding Busy(string folder) =>
        Error("PF7305", Invariant($"Another run is writing into '{folder}'."), "Wait until it has ended, or choose another folder.");

    public static Finding Link(string folder, string path) =>
        Error("PF7310", Invariant($"'{path}' in the output folder '{folder}' is a link: what is written there would land outside the folder. ")
            + "Nothing was changed.", "Remove the link (what it leads to stays), or choose another folder.");

    public static Finding ChangedSince(string folder, IReadOnlyCollection<string> paths) =>
        Error("PF7311", Invariant($"A run into '{folder}' was stopped half-way, and since then {Count(paths)} changed: {Named(paths)}. Nothing more was ")
            + "done.", "Move what you changed elsewhere and run again; build --force replaces it.");

    public static Finding NoRecord(string folder, string name) =>
        Error("PF7312", Invariant($"A run into '{folder}' was stopped half-way, and its record '{OutputFolder.StagingName}/{name}' cannot be read. ")
            + "Nothing was changed.", "Build into an empty folder, or build --force into this one.");

    public static Finding Unfinished(string folder, string why) =>
        Error("PF7313", Invariant($"A run into '{folder}' was stopped half-way and cannot be brought to an end: {why}. What is missing waits in ")
            + Invariant($"'{OutputFolder.StagingName}' inside it; nothing is lost."),
            "Close what holds the folder's files open, make sure that you may write there, and run build or verify again: either goes on from there.");

    public static Finding Obstacle(string folder, string path) =>
        Error("PF7314", Invariant($"The output folder '{folder}' cannot be written: '{path}' is a folder or lies below a file, where a file of ours should ")
            + "be. Nothing was changed.", "Move it elsewhere, or choose another folder.");

    public static string Count(IReadOnlyCollection<string> paths) => paths.Count == 1 ? "a file" : Invariant($"{paths.Count} files");

    public static string Named(IReadOnlyCollection<string> paths) =>
        string.Join(", ", paths.Take(NamedAtMost).Select(p => $"'{p}'")) + (paths.Count > NamedAtMost ? " and others" : "");

    private static Finding Error(string code, string what, string remedy) => Finding.Error(code, "", what, remedy, FaultKind.Output);

    /// <summary>What the system said, in words.</summary>
    public static Finding Refusal(string folder, Exception fault)
    {
        string why = fault switch
        {
            UnauthorizedAccessException or System.Security.SecurityException => "permission is denied",
            PathTooLongException => "a path is too long for this system",
            DirectoryNotFoundException => "a part of its path is not there",
            ArgumentOutOfRangeException => "a file would be longer than this system allows", // so the framework tells a limit on the length of files
            _ when File.Exists(folder) => "it is a file",
            IOException => "the system refuses: " + fault.Message.TrimEnd('.'),
            _ => "its name is not one this system takes",
        };
        string code = Directory.Exists(folder) ? "PF7303" : "PF7301";
        return Finding.Error(code, "", Invariant($"The output folder '{folder}' cannot be written: {why}. Nothing was ")
            + "changed.", "Choose a folder that you may write to, with room left on its disk.", FaultKind.Output);
    }
}
