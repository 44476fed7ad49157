namespace FitCheck.Reports.Format;

/// <summary>A template of a report is missing, unreadable or wrong. The message names the file and says what to do.</summary>
public sealed class TemplateException : Exception
{
    /// <summary>Without a word of what is wrong.</summary>
    public TemplateException()
    {
    }

    /// <summary>With a message that names the file and says what to do.</summary>
    public TemplateException(string message)
        : base(message)
    {
    }

    /// <summary>With a message that names the file and says what to do, and what went wrong below.</summary>
    public TemplateException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
