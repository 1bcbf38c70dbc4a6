// Checks books with the checker on Java, in one run, and names those that have an error or a warning. It is run by
// Rhino, which reads JavaScript of an older kind and can call Java.
/* global java, Packages, arguments, print */
for (var i = 0; i < arguments.length; i++) {
  var report = new Packages.com.adobe.epubcheck.util.DefaultReportImpl(arguments[i]);
  new Packages.com.adobe.epubcheck.api.EpubCheck(new java.io.File(arguments[i]), report).doValidate();
  if (report.getFatalErrorCount() + report.getErrorCount() + report.getWarningCount() > 0) {
    print('refused ' + arguments[i]);
  }
}
