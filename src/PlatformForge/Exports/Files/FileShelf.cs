namespace PlatformForge.Exports.Files;

/// <summary>Where the files of a run go as soon as they are made, several at a time.</summary>
public abstract class FileShelf
{
    /// <summary>Holds them in memory, for those who want bytes.</summary>
    public static FileShelf InMemory { get; } = new Held();

    /// <summary>Makes a file and puts it there.</summary>
    public abstract OutputFile Put(FileWork work);

    private sealed class Held : FileShelf
    {
        public override OutputFile Put(FileWork work) => new(work.Path, work.Make());
    }
}
