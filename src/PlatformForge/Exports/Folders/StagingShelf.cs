using PlatformForge.Exports.Files;

namespace PlatformForge.Exports.Folders;

/// <summary>The waiting room as a shelf: a file is on the disk as soon as it is made.</summary>
/// <param name="folder">The output folder.</param>
/// <param name="staging">Where files wait.</param>
/// <param name="present">What the folder holds.</param>
internal sealed class StagingShelf(string folder, StagingArea staging, FolderContents present) : FileShelf
{
    public override OutputFile Put(FileWork work)
    {
        OutputFolder.CheckPath(work.Path);
        try
        {
            return staging.Add(work, present.HashOf(work.Path));
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            // Told for what it is, on whichever thread it happened.
            throw new FolderFault(FolderFaults.Refusal(folder, fault));
        }
    }
}
