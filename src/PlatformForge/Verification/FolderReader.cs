using PlatformForge.Exports;
using PlatformForge.Exports.Manifests;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Verification;

/// <summary>Reads a finished output folder into memory, and nothing more: the only place of the room that touches files.</summary>
public static class FolderReader
{
    /// <summary>
    /// Reads the manifest and every file it names. Files that are not there are left out for the verifier to miss.
    /// </summary>
    /// <returns>PF8001 when there is no folder, no manifest in it, or the system refuses to read.</returns>
    public static Outcome<WrittenFolder> Read(string folder)
    {
        try
        {
            string list = Path.Combine(folder, Manifest.FileName);
            if (!File.Exists(list))
            {
                return Fault(Directory.Exists(folder) ? Invariant($"'{folder}' holds no {Manifest.FileName}.") : Invariant($"There is no folder '{folder}'."));
            }

            var files = new List<OutputFile> { new(Manifest.FileName, File.ReadAllBytes(list)) };
            if (ManifestForm.Read(files[0].Bytes, list).Value is { } manifest)
            {
                foreach (var file in manifest.Files)
                {
                    string path = Path.Combine(folder, file.Path);
                    if (File.Exists(path))
                    {
                        files.Add(new(file.Path, File.ReadAllBytes(path)));
                    }
                }
            }

            return Outcome.Of(new WrittenFolder(files));
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return Fault(Invariant($"'{folder}' cannot be read: {fault.Message.TrimEnd('.')}."));
        }
    }

    private static Outcome<WrittenFolder> Fault(string what) =>
        Outcome.Fault<WrittenFolder>(Finding.Error("PF8001", "", what, "Name a folder that this program built."));
}
