using System.Text;
using PlatformForge.Exports.Folders;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Projects.Reading;

/// <summary>Reads the text of a project or preset file from disk, refusing what can't be one.</summary>
public static class ProjectText
{
    /// <summary>Largest file taken, bytes. A generous project is a hundredth of it; readings go into CSV files beside it.</summary>
    public const int LargestFile = InputLimits.ProjectBytes;

    /// <summary>The text of a file: missing files, folders, pipes and devices, files over the limit, binary files and anything but UTF-8 are faults.</summary>
    /// <param name="path">Where the file is.</param>
    /// <param name="shown">How the user named it.</param>
    /// <param name="largest">Largest file taken, bytes.</param>
    /// <param name="what">What kind of file it is to be; a project file when left out.</param>
    public static Outcome<string> Read(string path, string shown, int largest = LargestFile, FileWords? what = null)
    {
        what ??= FileWords.Project;
        PlainFileRead read;
        try
        {
            read = PlainFile.Read(path, largest);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or NotSupportedException or ArgumentException)
        {
            return Fault("PF1001", shown, "The file can't be read: " + e.Message.ReplaceLineEndings(" "),
                "Check that the name is right and that you may read the file.");
        }

        return read.Fault switch
        {
            PlainFileFault.Folder => Fault("PF1002", shown, "This is a folder.", $"Name the {what.Name} in it, such as {Path.Combine(shown, what.Example)}."),
            PlainFileFault.Missing => Fault("PF1001", shown, "There is no such file.", "Check the name, or " + what.Start + shown),
            PlainFileFault.Empty => Fault("PF1040", shown, "The file is empty, or it is a pipe or a device, which have no length.",
                $"Name a plain file that holds a {what.Name}; what comes out of a pipe goes into a file first."),
            PlainFileFault.TooLong => Fault("PF1003", shown, Invariant($"The file has {read.Length} bytes, over the limit of {largest}."),
                what == FileWords.Measured ? "A row for each gap measured is enough."
                    : $"A {what.Name} holds no readings: they go into a CSV file that the project names."),
            _ => Decode(read.Bytes, shown, what),
        };
    }

    /// <summary>The text of bytes that were read: UTF-8 with or without a mark at the start, no other control characters than line ends and tabs.</summary>
    public static Outcome<string> Decode(ReadOnlySpan<byte> bytes, string shown, FileWords? what = null)
    {
        ReadOnlySpan<byte> mark = [0xEF, 0xBB, 0xBF];
        if (bytes.StartsWith(mark))
        {
            bytes = bytes[mark.Length..];
        }

        int zero = bytes.IndexOf((byte)0);
        if (zero >= 0)
        {
            return Fault("PF1004", shown, Invariant($"The file is not text: byte {zero + 1} is nil."),
                $"A {(what ?? FileWords.Project).Name} is plain text in UTF-8; if your editor saved it as UTF-16, save it again as UTF-8.");
        }

        try
        {
            return Outcome.Of(new UTF8Encoding(false, true).GetString(bytes));
        }
        catch (DecoderFallbackException e)
        {
            return Fault("PF1004", shown, Invariant($"The file is not UTF-8 text: byte {e.Index + 1} does not belong."),
                "Save it again as UTF-8 from a text editor.");
        }
    }

    private static Outcome<string> Fault(string code, string file, string message, string remedy) =>
        Outcome.Fault<string>(Finding.Error(code, "", message, remedy) with { File = file, Line = 1, Column = 1 });
}
