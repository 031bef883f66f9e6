using PlatformForge.Units;

namespace PlatformForge.Exports.Folders;

/// <summary>Why a folder is not touched, as a finding; never leaves the room.</summary>
internal sealed class FolderFault : Exception
{
    public FolderFault()
        : this("")
    {
    }

    public FolderFault(string message)
        : this(Told(message))
    {
    }

    public FolderFault(string message, Exception innerException)
        : base(message, innerException) => Finding = Told(message);

    public FolderFault(Finding finding)
        : base(finding.Message) => Finding = finding;

    public Finding Finding { get; }

    /// <summary>The one that was thrown, by whichever of several threads; null where there is none.</summary>
    public static FolderFault? In(Exception fault) =>
        fault as FolderFault ?? (fault as AggregateException)?.Flatten().InnerExceptions.OfType<FolderFault>().FirstOrDefault();

    private static Finding Told(string message) => Finding.Error("", "", message, "", FaultKind.Output);
}
