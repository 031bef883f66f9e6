using System.Text.Json;
using PlatformForge.Exports.Manifests;

namespace PlatformForge.Exports.Folders;

/// <summary>
/// What a run is about to do to a folder once all its files wait there. As long as the record lies in the staging area the folder counts as the new one,
/// whatever of it has been done; whoever comes next finishes it.
/// </summary>
/// <param name="Tool">The word by which it is ours.</param>
/// <param name="Format">Form of the record.</param>
/// <param name="Remove">Files to be taken away, with the hash they had.</param>
/// <param name="Replace">Files to be put in place.</param>
/// <param name="Folders">Folders made for them, the outer before the inner.</param>
internal sealed record CommitRecord(string Tool, int Format, IReadOnlyList<RemovedFile> Remove, IReadOnlyList<ReplacedFile> Replace,
    IReadOnlyList<string> Folders)
{
    /// <summary>Lies in the staging area from the moment on at which the folder is the new one.</summary>
    public const string FileName = "commit.json";

    /// <summary>The name that the record takes where the system refuses a step, from when on the folder is the old one again.</summary>
    public const string UndoName = "undo.json";

    private const int OurFormat = 1;

    public static CommitRecord Of(IReadOnlyList<RemovedFile> remove, IReadOnlyList<ReplacedFile> replace, IReadOnlyList<string> folders) =>
        new(Manifest.OurTool, OurFormat, remove, replace, folders);

    public byte[] ToBytes() => JsonForms.ToBytes(this, CommitJson.Forms.CommitRecord);

    /// <summary>Reads a record; null when it is none, is of another form, or speaks of anything but files below its folder.</summary>
    public static CommitRecord? Read(ReadOnlySpan<byte> bytes)
    {
        try
        {
            var record = JsonForms.Read(bytes, CommitJson.Forms.CommitRecord);
            return record is { Tool: Manifest.OurTool, Format: OurFormat } && record.Paths.Concat(record.Folders).All(ManifestForm.IsInside) ? record : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }

    private IEnumerable<string> Paths => Remove.Select(f => f.Path).Concat(Replace.Select(f => f.Path));
}

/// <summary>A file to be taken away and the SHA-256 it had.</summary>
internal sealed record RemovedFile(string Path, string Old);

/// <summary>A file to be put in place.</summary>
/// <param name="Path">Its path below the folder.</param>
/// <param name="Old">SHA-256 of what stood there; null when nothing did.</param>
/// <param name="New">SHA-256 of what is to stand there.</param>
internal sealed record ReplacedFile(string Path, string? Old, string New);
